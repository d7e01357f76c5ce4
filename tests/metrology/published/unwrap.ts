import type { Outcome } from "@/lib/metrology/outcome";

/** The value, or a failure that names the problem. */
export function unwrap<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(`${outcome.problem.kind}: ${outcome.problem.message}`);
  return outcome.value;
}
