import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { gateCodes } from "./codes";

const run = z.string().min(1);
const count = (n: number, one: string): string => `${n} ${one}${n === 1 ? "" : "s"}`;

/** Facts about the gate before a run; gathered in `domain/audit/events`. */
export const gateEvents = {
  benchChecked: defineEvent({
    action: "run.bench-checked",
    entityKind: "run",
    payload: z.strictObject({ run, kinds: z.array(z.string()), checks: z.number().int() }),
    sentence: (p) =>
      `recorded ${count(p.checks, "same-day check")} of run ${p.run} (${p.kinds.map((kind) => kind.replaceAll("-", " ")).join(", ")})`,
  }),
  overridden: defineEvent({
    action: "run.gate-overridden",
    entityKind: "run",
    payload: z.strictObject({
      run,
      code: z.enum(gateCodes),
      subjects: z.array(z.string()),
      reason: z.string(),
      reachesCertificate: z.boolean(),
    }),
    sentence: (p) =>
      `set aside “${p.code.replaceAll("-", " ")}” at the gate of run ${p.run}${p.subjects.length > 0 ? ` for ${p.subjects.join(", ")}` : ""}: ${p.reason}${p.reachesCertificate ? " (stands on the certificate)" : ""}`,
  }),
  passed: defineEvent({
    action: "run.gate-passed",
    entityKind: "run",
    payload: z.strictObject({
      run,
      policy: z.string(),
      warnings: z.number().int(),
      reasons: z.number().int(),
    }),
    sentence: (p) =>
      `let run ${p.run} start: its gate is passed with ${count(p.warnings, "warning")} and ${count(p.reasons, "reason")}`,
  }),
} as const;
