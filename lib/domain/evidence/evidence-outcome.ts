import type { EvidenceProblem } from "./evaluation";

/** A value, or every reason why there is none. */
export type EvidenceOutcome<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problems: readonly EvidenceProblem[] };

export function got<Value>(value: Value): EvidenceOutcome<Value> {
  return { ok: true, value };
}

export function missing(path: string, message: string): { ok: false; problems: EvidenceProblem[] } {
  return { ok: false, problems: [{ path, message }] };
}
