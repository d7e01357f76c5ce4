import type { TemperatureUnit } from "./labels";
import { temperatureUnitLabels } from "./labels";
import { celsiusOf, type Setpoint } from "./setpoint";

/** How the customer uses the sensors, and what they may be exposed to: as agreed, in °C. null = not stated. */
export type UseTerms = {
  readonly useFromCelsius: number | null;
  readonly useToCelsius: number | null;
  /** Nothing above it without agreement; null = the highest setpoint. */
  readonly maximumCelsius: number | null;
  readonly largestIntervalCelsius: number | null;
  /** Name of the rule set the interval comes from; empty = none. */
  readonly intervalRule: string;
};

export const noUseTerms: UseTerms = {
  useFromCelsius: null,
  useToCelsius: null,
  maximumCelsius: null,
  largestIntervalCelsius: null,
  intervalRule: "",
};

export const intervalChoices = ["none", "agreed", "bipm", "ams2750"] as const;
export type IntervalChoice = (typeof intervalChoices)[number];

/**
 * Rule sets. `title` is how they are chosen and stored, and what stands here from memory says so in it: the laboratory
 * confirms it. `said`: to a customer, who is told what was agreed and not what the laboratory has yet to look up.
 */
const ruleSets = {
  bipm: {
    title: "BIPM, Techniques for Approximating the ITS-90, Table 18.7: every 100 K",
    said: "BIPM, Techniques for Approximating the ITS-90, Table 18.7: every 100 K",
    interval: { C: 100, F: 180 },
  },
  ams2750: {
    title: "AMS2750: at most 250 °F (140 °C); from memory, to be confirmed by the edition agreed",
    said: "AMS2750, edition as agreed",
    // Each unit has its own round figure: 140 °C are 252 °F, and 250 °F is what is asked of a line in °F.
    interval: { C: 140, F: 250 },
  },
} as const;
type NamedRule = keyof typeof ruleSets;
const asAgreed = "as agreed with the customer";

export const intervalLabels: Readonly<Record<IntervalChoice, string>> = {
  none: "Not agreed",
  agreed: "As agreed, written beside it",
  bipm: ruleSets.bipm.title,
  ams2750: ruleSets.ams2750.title,
};

/** As typed, in the line's unit. */
export type UseDraft = {
  readonly useFrom: string;
  readonly useTo: string;
  readonly maximum: string;
  readonly intervalChoice: IntervalChoice;
  readonly largestInterval: string;
};

type Problem = { readonly field: keyof UseDraft; readonly message: string };

const decimal = /^[+-]?\d{1,5}(\.\d{1,6})?$/;
const plain = (typed: string): string => typed.trim().replaceAll("−", "-");

/** A difference, not a temperature: 250 °F apart are 138.9 °C apart. */
const intervalCelsius = (typed: string, unit: TemperatureUnit): number =>
  unit === "C" ? Number(typed) : (Number(typed) * 5) / 9;

const intervalOf = (
  draft: UseDraft,
  unit: TemperatureUnit,
  say: (field: keyof UseDraft, message: string) => void,
): Pick<UseTerms, "largestIntervalCelsius" | "intervalRule"> => {
  const { intervalChoice } = draft;
  if (intervalChoice === "none") return { largestIntervalCelsius: null, intervalRule: "" };
  if (intervalChoice !== "agreed") {
    const { interval, title } = ruleSets[intervalChoice];
    return { largestIntervalCelsius: intervalCelsius(String(interval[unit]), unit), intervalRule: title };
  }
  const typed = plain(draft.largestInterval);
  if (!decimal.test(typed) || !(Number(typed) > 0)) {
    say(
      "largestInterval",
      `Write how far apart setpoints may lie, in ${temperatureUnitLabels[unit]}, e.g. 100.`,
    );
    return { largestIntervalCelsius: null, intervalRule: asAgreed };
  }
  return { largestIntervalCelsius: intervalCelsius(typed, unit), intervalRule: asAgreed };
};

/** What was typed as terms in °C, and what is wrong with it, each at its field. */
export const readUseTerms = (
  draft: UseDraft,
  unit: TemperatureUnit,
  setpoints: readonly Setpoint[],
): { readonly terms: UseTerms; readonly problems: readonly Problem[] } => {
  const problems: Problem[] = [];
  const say = (field: keyof UseDraft, message: string): void => {
    problems.push({ field, message });
  };
  const temperature = (field: "useFrom" | "useTo" | "maximum"): number | null => {
    const typed = plain(draft[field]);
    if (typed === "") return null;
    if (decimal.test(typed)) return celsiusOf(typed, unit);
    say(field, "Write one temperature as a number, such as 900; its unit is the setpoints'.");
    return null;
  };
  const [useFromCelsius, useToCelsius] = [temperature("useFrom"), temperature("useTo")];
  const maximumCelsius = temperature("maximum");
  const isOpen = (draft.useFrom.trim() === "") !== (draft.useTo.trim() === "");
  if (isOpen)
    say(draft.useFrom.trim() === "" ? "useFrom" : "useTo", "Write both ends of the range, or neither.");
  if (useFromCelsius !== null && useToCelsius !== null && useFromCelsius >= useToCelsius)
    say("useTo", "The range ends above where it begins.");
  const highest = setpoints.at(-1);
  if (maximumCelsius !== null && highest && highest.celsius > maximumCelsius)
    say("maximum", `The setpoint ${highest.typed} ${temperatureUnitLabels[unit]} lies above it.`);
  const terms = { useFromCelsius, useToCelsius, maximumCelsius, ...intervalOf(draft, unit, say) };
  return { terms, problems };
};

const inUnit = (celsius: number | null, unit: TemperatureUnit): string =>
  celsius === null ? "" : String(Number((unit === "C" ? celsius : celsius * 1.8 + 32).toFixed(4)));

/** The rule set the interval was taken from; undefined where it was agreed for this line, or none is. */
export const namedRule = ({ intervalRule }: Pick<UseTerms, "intervalRule">): NamedRule | undefined =>
  (["bipm", "ams2750"] as const).find((choice) => ruleSets[choice].title === intervalRule);

/** The terms as a form shows them again, in the line's unit. */
export const draftOfUse = (terms: UseTerms, unit: TemperatureUnit): UseDraft => {
  const named = namedRule(terms);
  const interval = terms.largestIntervalCelsius;
  const isAgreed = named === undefined && interval !== null;
  return {
    useFrom: inUnit(terms.useFromCelsius, unit),
    useTo: inUnit(terms.useToCelsius, unit),
    maximum: inUnit(terms.maximumCelsius, unit),
    intervalChoice: named ?? (isAgreed ? "agreed" : "none"),
    largestInterval: isAgreed ? String(Number((unit === "C" ? interval : interval * 1.8).toFixed(4))) : "",
  };
};

/** "Used from 300 to 900 °C. Nothing above 950 °C. At most 100 °C between setpoints (…)."; empty where nothing is stated. */
export const termsOfUseText = (terms: UseTerms, unit: TemperatureUnit): string => {
  const name = temperatureUnitLabels[unit];
  const draft = draftOfUse(terms, unit);
  const interval = terms.largestIntervalCelsius;
  const rule = namedRule(terms);
  return [
    draft.useFrom && `Used from ${draft.useFrom} to ${draft.useTo} ${name}.`,
    draft.maximum && `Nothing above ${draft.maximum} ${name} without agreement.`,
    interval !== null &&
      `At most ${Number((unit === "C" ? interval : interval * 1.8).toFixed(2))} ${name} between setpoints (${rule ? ruleSets[rule].said : terms.intervalRule}).`,
  ]
    .filter(Boolean)
    .join(" ");
};
