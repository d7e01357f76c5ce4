import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import { TypeLetter } from "@/app/_ui/type-letter";
import { isoDay } from "@/lib/domain/calibration/due";
import { equipmentKindHeadings } from "@/lib/domain/equipment/labels";
import { equipmentKinds } from "@/lib/domain/equipment/types";
import { may } from "@/lib/domain/staff/permissions";
import { type StandardRow, standardsView } from "@/lib/views/standards";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { DueMark, EquipmentStateMark } from "./marks";

export const metadata = { title: "Standards" };

const columns = [
  { key: "tag", header: "Tag" },
  { key: "what", header: "What it is" },
  { key: "certificate", header: "Certificate in force" },
  { key: "dueOn", header: "Due" },
  { key: "due", header: "Calibration" },
  { key: "state", header: "State" },
];

const rowOf = (row: StandardRow) => ({
  key: row.id,
  tone:
    row.state === "suspect" || row.due === "out-of-date"
      ? ("bad" as const)
      : row.due === "due"
        ? ("watch" as const)
        : undefined,
  cells: {
    tag: (
      <Link href={`/standards/${row.id}`} style={{ whiteSpace: "nowrap" }}>
        {row.tag}
      </Link>
    ),
    what: (
      <>
        {row.typeLetter ? <TypeLetter letter={row.typeLetter} /> : null} {row.model}, no. {row.serial}
      </>
    ),
    certificate: row.certificate ? `${row.certificate}, ${row.issuer}` : "",
    dueOn: row.dueOn ? <Timestamp at={row.dueOn} precision="day" /> : "",
    due: <DueMark due={row.due} />,
    state: <EquipmentStateMark state={row.state} />,
  },
});

export default async function StandardsPage() {
  const actor = await requireStaff();
  const rows = await load(standardsView(actor, isoDay(new Date())));
  const record = may(actor.roles, "equipment.record") ? (
    <LinkButton href="/standards/new" kind="primary">
      Record equipment
    </LinkButton>
  ) : null;
  return (
    <Page
      title="Standards"
      lead="What the laboratory measures with. Every result names the ones it rests on, with the certificate that was in force on its day."
      actions={
        <>
          <LinkButton href="/providers">Providers</LinkButton>
          {rows.length > 0 ? record : null}
        </>
      }
    >
      {rows.length === 0 ? (
        <EmptyState title="No equipment yet" action={record}>
          A run needs at least one reference thermocouple and a voltmeter, each with its certificate, a
          scanner, and a reference junction.
        </EmptyState>
      ) : null}
      {equipmentKinds
        .filter((kind) => rows.some((row) => row.kind === kind))
        .map((kind) => (
          <Section key={kind} title={equipmentKindHeadings[kind]} wide>
            <DataTable
              caption={equipmentKindHeadings[kind]}
              captionUnseen
              columns={columns}
              rows={rows.filter((row) => row.kind === kind).map(rowOf)}
            />
          </Section>
        ))}
    </Page>
  );
}
