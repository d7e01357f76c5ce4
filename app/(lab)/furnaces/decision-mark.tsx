import { StateMark } from "@/app/_ui/state-mark";
import type { DecisionState } from "@/lib/domain/furnace/decision-state";

const marks = {
  waiting: { state: "waiting", label: "Waits for another person" },
  accepted: { state: "issued", label: "Accepted" },
  returned: { state: "returned", label: "Returned" },
} as const satisfies Readonly<Record<DecisionState, { state: string; label: string }>>;

export function DecisionMark({ state }: { readonly state: DecisionState }) {
  return <StateMark {...marks[state]} />;
}
