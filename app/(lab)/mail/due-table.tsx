import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import { dueKindLabels } from "@/lib/domain/reminder/labels";
import type { MailPage } from "@/lib/views/mail";

const columns = [
  { key: "thing", header: "Equipment or configuration" },
  { key: "what", header: "What" },
  { key: "dueOn", header: "Due" },
  { key: "state", header: "State" },
  { key: "told", header: "Reminder" },
];

/** What has reached its notice or its day, the earliest first. */
export function DueTable({ due }: { readonly due: MailPage["due"] }) {
  return (
    <DataTable
      caption="Due within 30 days or out of date"
      captionUnseen
      columns={columns}
      rows={due.map((thing) => ({
        key: `${thing.dueKind} ${thing.subjectId}`,
        tone: thing.stage === "due" ? ("watch" as const) : ("bad" as const),
        cells: {
          thing: <Link href={thing.path}>{thing.title}</Link>,
          what: dueKindLabels[thing.dueKind],
          dueOn: <Timestamp at={thing.dueOn} precision="day" />,
          state: <StateMark state={thing.stage} />,
          told: thing.isTold ? "told" : "not told yet",
        },
      }))}
      empty={
        <EmptyState title="Nothing is due">
          A calibration, an intermediate check, maintenance or a characterisation comes here 30 days before
          its day.
        </EmptyState>
      }
    />
  );
}
