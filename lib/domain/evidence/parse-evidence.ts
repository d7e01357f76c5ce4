import type { z } from "zod";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import { Evidence } from "./schema";
import { EvidenceV1 } from "./schema-v1";
import { upgradeEvidence } from "./upgrade-evidence";

/**
 * Reads unknown input as evidence; each problem carries its path in the file, e.g. references[0].correction.
 * A file of version 1 is read as such and carried over to version 2.
 */
export function parseEvidence(input: unknown): EvidenceOutcome<Evidence> {
  const version = versionOf(input);
  if (version === 1) {
    const parsed = EvidenceV1.safeParse(input);
    return parsed.success ? got(upgradeEvidence(parsed.data)) : problemsOf(parsed.error);
  }
  if (typeof version === "number" && version !== 2) {
    return missing("version", `Version ${version} is not known here: 1 and 2 are.`);
  }
  const parsed = Evidence.safeParse(input);
  return parsed.success ? got(parsed.data) : problemsOf(parsed.error);
}

export function versionOf(input: unknown): unknown {
  return typeof input === "object" && input !== null && "version" in input ? input.version : undefined;
}

function problemsOf(error: z.ZodError): { ok: false; problems: { path: string; message: string }[] } {
  return {
    ok: false,
    problems: error.issues.map((issue) => ({ path: writePath(issue.path), message: explain(issue) })),
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
