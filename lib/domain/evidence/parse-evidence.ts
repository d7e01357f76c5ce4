import type { z } from "zod";
import { type EvidenceOutcome, got } from "./evidence-outcome";
import { Evidence } from "./schema";

/** Reads unknown input as evidence; each problem carries its path in the file, e.g. references[0].deviations. */
export function parseEvidence(input: unknown): EvidenceOutcome<Evidence> {
  const parsed = Evidence.safeParse(input);
  if (parsed.success) return got(parsed.data);
  return {
    ok: false,
    problems: parsed.error.issues.map((issue) => ({ path: writePath(issue.path), message: explain(issue) })),
  };
}

function writePath(path: readonly PropertyKey[]): string {
  return path.reduce<string>((written, key) => {
    if (typeof key === "number") return `${written}[${key}]`;
    return written === "" ? String(key) : `${written}.${String(key)}`;
  }, "");
}

function explain(issue: z.core.$ZodIssue): string {
  if (issue.code === "unrecognized_keys") {
    return `Unknown field ${issue.keys.join(", ")}: the format has no such field; check its spelling or take it out.`;
  }
  // Zod speaks of undefined, a person of a field that is not there.
  const missing = /^(.*expected .*), received undefined$/.exec(issue.message);
  return missing ? `The field is missing (${missing[1]?.toLowerCase()}).` : `${issue.message}.`;
}
