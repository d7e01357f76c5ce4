import { StateMark } from "@/app/_ui/state-mark";
import { type NonconformityState, nonconformityStateLabels } from "@/lib/domain/nonconformity/labels";

const marks = { open: "exception", examined: "waiting", corrected: "active", closed: "done" } as const;

export function NonconformityMark({ state }: { readonly state: NonconformityState }) {
  return <StateMark state={marks[state]} label={nonconformityStateLabels[state]} />;
}
