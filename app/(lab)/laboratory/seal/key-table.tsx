import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { Hash } from "@/app/_ui/hash";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import type { SealKeyRow } from "@/lib/views/seal/keys";
import { EndKey } from "./end-key";

const columns = [
  { key: "key", header: "Key" },
  { key: "does", header: "What it does" },
  { key: "until", header: "In force until" },
  { key: "state", header: "State" },
  { key: "end", header: "If it is to be used no more" },
];

const marks = {
  "in-force": { state: "in-date", label: "In force" },
  "ends-soon": { state: "due", label: "Ends soon" },
  "not-yet": { state: "waiting", label: "Not yet in force" },
  expired: { state: "out-of-date", label: "Ended" },
  retired: { state: "superseded", label: "Retired" },
  revoked: { state: "withdrawn", label: "Revoked" },
} as const;

function State({ state, reason }: Pick<SealKeyRow, "state" | "reason">) {
  return (
    <>
      <StateMark {...marks[state.kind]} />
      {state.kind === "ends-soon" ? <div className="quiet">in {state.days} days</div> : null}
      {"from" in state ? (
        <div className="quiet">
          from <Timestamp at={state.from.toISOString()} />: {reason}
        </div>
      ) : null}
    </>
  );
}

/** Every key that ever sealed or told the time, since documents of all of them are out there. */
export function KeyTable({ keys }: { readonly keys: readonly SealKeyRow[] }) {
  return (
    <DataTable
      caption="Keys"
      captionUnseen
      columns={columns}
      rows={keys.map((key) => ({
        key: key.id,
        cells: {
          key: (
            <>
              <Hash value={key.fingerprint} length={16} label="Fingerprint" />
              <div className="quiet">
                {key.algorithm}, {key.subject}
              </div>
            </>
          ),
          does: `${key.does}, ${key.from}`,
          until: <Timestamp at={key.notAfter} precision="day" />,
          state: <State state={key.state} reason={key.reason} />,
          end: <EndKey sealKey={key} />,
        },
      }))}
      empty={
        <EmptyState title="No key yet">
          One is made, or taken from the site’s file, at the next start and at the latest with the first
          certificate.
        </EmptyState>
      }
    />
  );
}
