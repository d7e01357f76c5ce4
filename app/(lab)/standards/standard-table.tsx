import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import { TypeLetter } from "@/app/_ui/type-letter";
import { serviceGroundLabels } from "@/lib/domain/equipment/labels";
import type { StandardRow } from "@/lib/views/standards";
import { DueMark, EquipmentStateMark } from "./marks";

const columns = [
  { key: "tag", header: "Tag" },
  { key: "what", header: "What it is" },
  { key: "certificate", header: "Certificate in force" },
  { key: "dueOn", header: "Due" },
  { key: "due", header: "Calibration" },
  { key: "work", header: "Checks and maintenance" },
  { key: "state", header: "State" },
];

const toneOf = ({ state, due, against, workDue }: StandardRow) => {
  if (state === "suspect" || due === "out-of-date" || against?.blocks) return "bad" as const;
  return due === "due" || workDue === "due" || against ? ("watch" as const) : undefined;
};

/** Never planned says nothing; planned and not known since when is at once. */
function Work({ row }: { readonly row: StandardRow }) {
  if (row.against)
    return (
      <StateMark
        state={row.against.blocks ? "out-of-date" : "due"}
        label={serviceGroundLabels[row.against.ground]}
      />
    );
  if (row.workDueOn === null) return null;
  return (
    <>
      <Timestamp at={row.workDueOn} precision="day" />{" "}
      {row.workDue === "due" ? <StateMark state="due" label="Due within 30 days" /> : null}
    </>
  );
}

const rowOf = (row: StandardRow) => ({
  key: row.id,
  tone: toneOf(row),
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
    due: row.kind === "furnace" ? "" : <DueMark due={row.due} />,
    work: <Work row={row} />,
    state: <EquipmentStateMark state={row.state} />,
  },
});

/** Equipment of one kind: calibration, checks and state side by side. */
export function StandardTable({
  caption,
  rows,
}: {
  readonly caption: string;
  readonly rows: readonly StandardRow[];
}) {
  return <DataTable caption={caption} captionUnseen columns={columns} rows={rows.map(rowOf)} />;
}
