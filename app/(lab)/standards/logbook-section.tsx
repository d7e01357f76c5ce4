import { DataTable, type Row } from "@/app/_ui/data-table";
import { Disclosure } from "@/app/_ui/disclosure";
import { LinkButton } from "@/app/_ui/link-button";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import { entryKindLabels } from "@/lib/domain/equipment/labels";
import type { Equipment } from "@/lib/domain/equipment/types";
import type { EquipmentServiceView } from "@/lib/views/equipment-service";
import { entryFacts } from "./entry-facts";

type Props = { readonly equipment: Equipment; readonly service: EquipmentServiceView };

const columns = [
  { key: "day", header: "Day" },
  { key: "kind", header: "What" },
  { key: "summary", header: "Done and found" },
  { key: "outcome", header: "Outcome" },
  { key: "by", header: "Written by" },
];

const atOnce = 12;

/** The newest open, the rest one step further down. */
function Entries({ rows }: { readonly rows: readonly Row[] }) {
  const older = rows.slice(atOnce);
  return (
    <>
      <DataTable caption="Logbook" captionUnseen columns={columns} rows={rows.slice(0, atOnce)} />
      {older.length > 0 ? (
        <Disclosure summary={`${older.length} older`}>
          <DataTable caption="Older entries of the logbook" captionUnseen columns={columns} rows={older} />
        </Disclosure>
      ) : null}
    </>
  );
}

/** Checks, maintenance, damage and repair, anneals, moves and labels: 6.4.13 c, g and h. Nothing in it is ever changed. */
export function LogbookSection({ equipment, service }: Props) {
  const write =
    service.mayWrite && equipment.state !== "retired" ? (
      <LinkButton href={`/standards/${equipment.id}/logbook/new`}>Write into the logbook</LinkButton>
    ) : null;
  return (
    <Section
      title="Logbook"
      note="Newest first. Nothing is changed; what was wrong is followed by what is right."
      actions={write}
      wide
    >
      {service.entries.length === 0 ? (
        <p className="quiet">Nothing written yet.</p>
      ) : (
        <Entries
          rows={service.entries.map((entry) => ({
            key: String(entry.id),
            tone: entry.outcome === "failed" ? ("bad" as const) : undefined,
            cells: {
              day: <Timestamp at={entry.happenedOn} precision="day" />,
              kind: entryKindLabels[entry.kind],
              summary: (
                <>
                  {[entry.summary, entryFacts(entry)].filter(Boolean).join(" · ")}
                  {entry.documentId ? (
                    <>
                      {" "}
                      <a href={`/api/documents/${entry.documentId}`} download>
                        File
                      </a>
                    </>
                  ) : null}
                </>
              ),
              outcome:
                entry.outcome === "none" ? (
                  ""
                ) : (
                  <StateMark
                    state={entry.outcome === "passed" ? "pass" : "fail"}
                    label={entry.outcome === "passed" ? "Passed" : "Failed"}
                  />
                ),
              by: entry.recordedBy,
            },
          }))}
        />
      )}
    </Section>
  );
}
