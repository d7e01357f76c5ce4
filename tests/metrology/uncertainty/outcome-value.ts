import type { Outcome } from "@/lib/metrology/outcome";

/** The value, or a failed test that says why there is none. */
export function outcomeValue<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(`${outcome.problem.kind}: ${outcome.problem.message}`);
  return outcome.value;
}
