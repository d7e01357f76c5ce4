import { DataTable } from "@/app/_ui/data-table";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import type { ProcedureView } from "@/lib/views/procedure";

type Revision = ProcedureView["revisions"][number];

const marks = {
  draft: <StateMark state="draft" />,
  current: <StateMark state="done" label="Current" />,
  withdrawn: <StateMark state="cancelled" label="Withdrawn" />,
} as const;

const daysOf = ({ currentFrom, withdrawnAt, currentBy }: Revision) =>
  currentFrom === null ? (
    ""
  ) : (
    <>
      <Timestamp at={currentFrom} precision="day" />
      {withdrawnAt ? (
        <>
          {" to "}
          <Timestamp at={withdrawnAt} precision="day" />
        </>
      ) : null}
      <br />
      <span className="quiet">{currentBy}</span>
    </>
  );

/** Every revision: what it changed, what shows that it works, who drafted it and who made it current. */
export function RevisionTable({ view }: { readonly view: ProcedureView }) {
  return (
    <DataTable
      caption={`Revisions of ${view.title}`}
      captionUnseen
      columns={[
        { key: "revision", header: "Revision", align: "number" },
        { key: "state", header: "State" },
        { key: "change", header: "What changed" },
        { key: "verification", header: "Verification" },
        { key: "drafted", header: "Drafted" },
        { key: "current", header: "Current" },
      ]}
      rows={view.revisions.map((one) => ({
        key: one.id,
        cells: {
          revision: one.revision,
          state: marks[one.state],
          change: one.change || <span className="quiet">not written yet</span>,
          verification: one.verification || <span className="quiet">not written yet</span>,
          drafted: (
            <>
              <Timestamp at={one.draftedAt} precision="day" />
              <br />
              <span className="quiet">{one.draftedBy}</span>
            </>
          ),
          current: daysOf(one),
        },
      }))}
    />
  );
}
