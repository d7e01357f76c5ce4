/**
 * Metrology never throws for data: a value that cannot be had comes back as a problem, by name.
 * `message` says what and where in words for a person; the caller adds the place in its own file or form.
 */
export type ProblemKind = "not-finite" | "outside-range" | "too-few" | "not-applicable" | "no-solution";

export type Problem = { readonly kind: ProblemKind; readonly message: string };

export type Outcome<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problem: Problem };

export function found<Value>(value: Value): Outcome<Value> {
  return { ok: true, value };
}

export function refused(
  kind: ProblemKind,
  message: string,
): { readonly ok: false; readonly problem: Problem } {
  return { ok: false, problem: { kind, message } };
}
