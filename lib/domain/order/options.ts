import { z } from "zod";
import type { TemperatureUnit } from "./labels";
import { temperatureUnitLabels } from "./labels";

/** What a line asks for beyond its points; what is left out is not asked for. Stored as JSON text with the line. */

export const measuredSets = ["as-received", "after-anneal", "both"] as const;
export type MeasuredSets = (typeof measuredSets)[number];
export const measuredSetLabels: Readonly<Record<MeasuredSets, string>> = {
  "as-received": "As received",
  "after-anneal": "After annealing here",
  both: "As received, then annealed, then again",
};

export const reportForms = ["per-sensor", "per-lot"] as const;
export type ReportForm = (typeof reportForms)[number];
export const reportFormLabels: Readonly<Record<ReportForm, string>> = {
  "per-sensor": "One certificate for each sensor",
  "per-lot": "One certificate for the lot",
};

/** Which of two measurements of one sensor is reported: said before the second is made. */
export const countingRules = ["later-counts", "earlier-counts-if-they-agree"] as const;
export type CountingRule = (typeof countingRules)[number];
export const countingRuleLabels: Readonly<Record<CountingRule, string>> = {
  "later-counts": "The later one counts",
  "earlier-counts-if-they-agree": "The earlier one counts, if they agree within their U",
};

/** English alone, or English and German in one document, the English leading and binding. */
export const reportLanguages = ["en", "en-de"] as const;
export type ReportLanguage = (typeof reportLanguages)[number];
export const reportLanguageLabels: Readonly<Record<ReportLanguage, string>> = {
  en: "English",
  "en-de": "English and German",
};

/** ISO/IEC 17025:2017, 7.8.1.3: simplified only as agreed with the customer. */
export const contentForms = ["full", "simplified"] as const;
export type ContentForm = (typeof contentForms)[number];
export const contentFormLabels: Readonly<Record<ContentForm, string>> = {
  full: "Full",
  simplified: "Simplified, as agreed",
};

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
  /** Left out in lines from before it could be asked. */
  language: z.enum(reportLanguages).default("en"),
  form: z.enum(contentForms).default("full"),
  /** By what a simplified report was agreed: a letter, a contract, a person and a day. */
  formAgreement: z.string().min(1).max(200).optional(),
});
export type LineOptions = z.output<typeof LineOptions>;

/** As stored; a text nobody of ours could have written is a fault and said so by the parser. */
export const readLineOptions = (stored: string): LineOptions => LineOptions.parse(JSON.parse(stored));

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

const annealText = ({ sets, anneal }: LineOptions): string => {
  if (sets === "as-received" || !anneal) return "";
  const how = `annealed at ${anneal.celsius} °C for ${anneal.hours} h`;
  return sets === "both" ? `Measured as received, then ${how}, then measured again` : `First ${how}`;
};

/** What is asked for beyond the points, as phrases; empty where nothing is. A table never leaves the calibrated setpoints. */
export const lineOptionPhrases = (options: LineOptions, unit: TemperatureUnit): readonly string[] => [
  ...[annealText(options)].filter(Boolean),
  ...(options.correctionTable
    ? [
        `Table of corrections every ${options.correctionTable.step} ${temperatureUnitLabels[unit]}, between the lowest and the highest calibrated setpoint only`,
      ]
    : []),
  ...(options.coefficients ? ["Coefficients of the deviation function"] : []),
  ...(options.budget ? ["Uncertainty budget on the certificate"] : []),
  ...(options.evidence ? ["Evidence file attached"] : []),
  ...(options.report === "per-lot" ? [reportFormLabels["per-lot"]] : []),
  ...(options.countingRule === "later-counts"
    ? []
    : [`If measured again: ${lowerFirst(countingRuleLabels[options.countingRule])}`]),
  ...(options.language === "en" ? [] : ["Certificate in English and German"]),
  ...(options.form === "full" ? [] : [`Simplified certificate, agreed: ${options.formAgreement ?? ""}`]),
];
