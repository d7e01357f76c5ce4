import type { Outcome } from "@/lib/metrology/outcome";

/** The value of an outcome that must be there, or a failing test that says why it is not. */
export function resultOf<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(`${outcome.problem.kind}: ${outcome.problem.message}`);
  return outcome.value;
}

/** The kind of problem of an outcome that must be refused. */
export function problemOf<Value>(outcome: Outcome<Value>): string {
  if (outcome.ok) throw new Error(`not refused: ${JSON.stringify(outcome.value)}`);
  return outcome.problem.kind;
}
