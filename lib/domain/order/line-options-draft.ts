import { z } from "zod";
import { optionalText } from "./field";
import { type TemperatureUnit, temperatureUnitLabels } from "./labels";
import { type LineMarks, workPlaces } from "./line-marks";
import {
  contentForms,
  countingRules,
  type LineOptions,
  measuredSets,
  reportForms,
  reportLanguages,
} from "./options";
import type { Setpoint } from "./setpoint";

/** A box of a form: ticked = "on". */
const tick = z
  .union([z.boolean(), z.string()])
  .default(false)
  .transform((value) => value === true || (typeof value === "string" && value !== ""));

/** Fields of an order line beyond its points, as typed. */
export const lineOptionFields = {
  groupName: optionalText(120),
  sets: z.enum(measuredSets, "Choose what is measured.").default("as-received"),
  annealCelsius: optionalText(20),
  annealHours: optionalText(20),
  /** In the line's unit; left empty: no table. */
  tableStep: optionalText(20),
  coefficients: tick,
  budget: tick,
  evidence: tick,
  report: z.enum(reportForms, "Choose how it is reported.").default("per-sensor"),
  countingRule: z.enum(countingRules, "Choose which measurement counts.").default("later-counts"),
  language: z.enum(reportLanguages, "Choose the language of the certificate.").default("en"),
  form: z.enum(contentForms, "Choose a full or a simplified certificate.").default("full"),
  formAgreement: optionalText(200),
  performedAt: z.enum(workPlaces, "Choose where it is done.").default("laboratory"),
  siteAddress: optionalText(300),
  providerId: z.union([z.literal(""), z.uuid("Choose a provider from the list.")]).default(""),
};

export const lineOptionNames = Object.keys(lineOptionFields) as readonly (keyof typeof lineOptionFields)[];

type Draft = z.output<z.ZodObject<typeof lineOptionFields>>;
type Field = keyof Draft;
type Problem = { readonly field: Field; readonly message: string };
type Line = {
  readonly temperatureUnit: TemperatureUnit;
  readonly setpoints: readonly Setpoint[];
  readonly maximumCelsius: number | null;
};
type Say = (field: Field, message: string) => void;

/** The number typed, where it lies within; otherwise NaN. */
const numberWithin = (typed: string, above: number, most: number): number => {
  const value = /^\d{1,5}(\.\d{1,4})?$/.test(typed) ? Number(typed) : Number.NaN;
  return value > above && value <= most ? value : Number.NaN;
};

const annealOf = (draft: Draft, { maximumCelsius }: Line, say: Say): LineOptions["anneal"] => {
  if (draft.sets === "as-received") {
    if (draft.annealCelsius !== "" || draft.annealHours !== "")
      say("sets", "An anneal is written, but the sensors are to be measured as received only. Choose one.");
    return undefined;
  }
  const celsius = numberWithin(draft.annealCelsius, 99.9999, 1500);
  const hours = numberWithin(draft.annealHours, 0, 200);
  if (Number.isNaN(celsius)) say("annealCelsius", "Write the temperature in °C, from 100 to 1500.");
  if (Number.isNaN(hours)) say("annealHours", "Write the hours, up to 200, e.g. 2.");
  if (maximumCelsius !== null && celsius > maximumCelsius)
    say("annealCelsius", "This is hotter than the sensors may become: see “Nothing above”.");
  return Number.isNaN(celsius) || Number.isNaN(hours) ? undefined : { celsius, hours };
};

const tableOf = (draft: Draft, line: Line, say: Say): LineOptions["correctionTable"] => {
  if (draft.tableStep === "") return undefined;
  // Whole degrees: rows stand at multiples of the step.
  const step = /^\d{1,3}$/.test(draft.tableStep) ? numberWithin(draft.tableStep, 0, 500) : Number.NaN;
  if (Number.isNaN(step))
    say(
      "tableStep",
      `Write the step in whole ${temperatureUnitLabels[line.temperatureUnit]}, up to 500, e.g. 10.`,
    );
  if (line.setpoints.length === 1)
    say("tableStep", "A table runs between setpoints, and this line has one. Add another, or no table.");
  return Number.isNaN(step) ? undefined : { step };
};

const leftOut = ({ tableStep, coefficients, budget }: Draft): string[] => [
  ...(tableStep === "" ? [] : ["the table of corrections"]),
  ...(coefficients ? ["the coefficients"] : []),
  ...(budget ? ["the uncertainty budget"] : []),
];

/** ISO/IEC 17025:2017, 7.8.1.3: simplified only by agreement, and never with what it leaves out. */
const formOf = (draft: Draft, say: Say): Pick<LineOptions, "form" | "formAgreement"> => {
  const { form, formAgreement } = draft;
  if (form === "full") {
    if (formAgreement !== "")
      say(
        "form",
        "An agreement on a simplified certificate is written, but a full one is chosen. Choose one.",
      );
    return { form };
  }
  if (formAgreement === "")
    say(
      "formAgreement",
      "Write by what it was agreed: a letter, a contract, or who agreed and when (7.8.1.3).",
    );
  const lost = leftOut(draft);
  if (lost.length > 0)
    say("form", `A simplified certificate leaves out ${lost.join(" and ")} asked for here. Take one back.`);
  return { form, formAgreement };
};

/** What was typed as options and marks, and what is wrong with it, each at its field. */
export const readLineOptionsDraft = (
  draft: Draft,
  line: Line,
): { readonly options: LineOptions; readonly marks: LineMarks; readonly problems: readonly Problem[] } => {
  const problems: Problem[] = [];
  const say: Say = (field, message) => {
    problems.push({ field, message });
  };
  const anneal = annealOf(draft, line, say);
  const correctionTable = tableOf(draft, line, say);
  const form = formOf(draft, say);
  const isOnSite = draft.performedAt === "customer-site";
  if (isOnSite && draft.siteAddress === "")
    say("siteAddress", "Write where: the certificate names the place (7.8.2.1 c).");
  const { sets, coefficients, budget, evidence, report, countingRule, language } = draft;
  return {
    options: {
      ...{ sets, coefficients, budget, evidence, report, countingRule, language, ...form },
      ...(anneal ? { anneal } : {}),
      ...(correctionTable ? { correctionTable } : {}),
    },
    marks: {
      groupName: draft.groupName,
      performedAt: draft.performedAt,
      // An address typed and left, with the work done here, is no place of it.
      siteAddress: isOnSite ? draft.siteAddress : "",
      providerId: draft.providerId === "" ? null : draft.providerId,
    },
    problems,
  };
};

/** Options and marks as a form shows them again. */
export const draftOfOptions = (options: LineOptions, marks: LineMarks) => ({
  groupName: marks.groupName,
  sets: options.sets as string,
  annealCelsius: options.anneal ? String(options.anneal.celsius) : "",
  annealHours: options.anneal ? String(options.anneal.hours) : "",
  tableStep: options.correctionTable ? String(options.correctionTable.step) : "",
  coefficients: options.coefficients ? "on" : "",
  budget: options.budget ? "on" : "",
  evidence: options.evidence ? "on" : "",
  report: options.report as string,
  countingRule: options.countingRule as string,
  language: options.language as string,
  form: options.form as string,
  formAgreement: options.formAgreement ?? "",
  performedAt: marks.performedAt as string,
  siteAddress: marks.siteAddress,
  providerId: marks.providerId ?? "",
});
