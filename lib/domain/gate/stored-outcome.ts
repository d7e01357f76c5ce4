import { z } from "zod";
import type { GateAssessment, GateRow } from "./assessment";
import type { LastTime } from "./plan";

const StoredRow = z.object({
  heading: z.string(),
  code: z.string(),
  severity: z.enum(["refuse", "overridable", "warning", "ok"]),
  subjects: z.array(z.string()),
  reason: z.string(),
  remedy: z.string(),
  source: z.string(),
  given: z.string().nullable(),
  reachesCertificate: z.boolean(),
});
export type StoredRow = z.output<typeof StoredRow>;

const rowOf = (heading: string, row: GateRow): StoredRow => ({
  heading,
  code: row.code,
  severity: row.severity,
  subjects: [...row.subjects],
  reason: row.reason,
  remedy: row.remedy,
  source: row.source,
  given: row.given,
  reachesCertificate: row.given !== null && row.override?.reachesCertificate === true,
});

/** The rows as they are kept with the outcome: what was said, and what was answered, on that day. */
export const storedRows = (assessment: GateAssessment): readonly StoredRow[] =>
  assessment.headings.flatMap(({ heading, rows }) => rows.map((row) => rowOf(heading, row)));

/** Stored text read back. It was judged when it was written, so a misfit is a defect and throws. */
export const readStoredRows = (text: string): readonly StoredRow[] =>
  z.array(StoredRow).parse(JSON.parse(text));

/** What an earlier outcome offers to the next run of the same configuration. */
export const acceptedIn = (run: string, rows: readonly StoredRow[]): LastTime => ({
  run,
  accepted: rows.flatMap(({ code, given }) => (given === null ? [] : [{ code, reason: given }])),
});
