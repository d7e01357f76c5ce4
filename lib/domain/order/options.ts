import { z } from "zod";

/** What a line asks for beyond its points; what is left out is not asked for. Stored as JSON text with the line. */

export const measuredSets = ["as-received", "after-anneal", "both"] as const;
export type MeasuredSets = (typeof measuredSets)[number];

export const reportForms = ["per-sensor", "per-lot"] as const;
export type ReportForm = (typeof reportForms)[number];

/** Which of two measurements of one sensor is reported: said before the second is made. */
export const countingRules = ["later-counts", "earlier-counts-if-they-agree"] as const;
export type CountingRule = (typeof countingRules)[number];

export const LineOptions = z.strictObject({
  /** As it came, after the laboratory annealed it, or both on one certificate (ISO/IEC 17025 7.8.4.1 d). */
  sets: z.enum(measuredSets).default("as-received"),
  /** How it is to be annealed, where it is. */
  anneal: z
    .strictObject({ celsius: z.number().min(100).max(1500), hours: z.number().positive().max(200) })
    .optional(),
  /** A table of corrections between the setpoints, in the line's unit. */
  correctionTable: z.strictObject({ step: z.number().positive().max(500) }).optional(),
  /** The coefficients of the fitted deviation function. */
  coefficients: z.boolean().default(false),
  /** The uncertainty budget of each point. */
  budget: z.boolean().default(false),
  /** The evidence file goes with the certificate. */
  evidence: z.boolean().default(false),
  report: z.enum(reportForms).default("per-sensor"),
  countingRule: z.enum(countingRules).default("later-counts"),
});
export type LineOptions = z.output<typeof LineOptions>;

/** As stored; a text nobody of ours could have written is a fault and said so by the parser. */
export const readLineOptions = (stored: string): LineOptions => LineOptions.parse(JSON.parse(stored));
