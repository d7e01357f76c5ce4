import type { ToleranceRef } from "../evidence/schema";
import { ownLimitName, toleranceWords } from "../evidence/tolerance-at";
import { type TemperatureUnit, type ToleranceChoice, temperatureUnitLabels } from "./labels";

export type AskedTolerance = {
  readonly tolerance: ToleranceChoice;
  /** Half-width of the customer's own limit in the line's unit, as typed; only with the choice "own". */
  readonly ownLimit?: number | null;
  readonly temperatureUnit: TemperatureUnit;
};

/** A class of a standard, or the limit as it was typed: "± 5 °F". Both columns are empty where nothing is asked. */
export type StoredTolerance = {
  readonly toleranceStandard: string | null;
  readonly toleranceClass: string | null;
};

const iec = "IEC 60584-1:2013";
const astm = "ASTM E230/E230M";

const published = {
  "1": { standard: iec, class: "1" },
  "2": { standard: iec, class: "2" },
  "3": { standard: iec, class: "3" },
  "astm-standard": { standard: astm, class: "standard" },
  "astm-special": { standard: astm, class: "special" },
} as const satisfies Record<Exclude<ToleranceChoice, "none" | "own">, ToleranceRef>;

/** What a line asks to be judged by, in the evidence's words; null where nothing, or no limit yet. */
export const askedTolerance = (line: AskedTolerance, source = "as ordered"): ToleranceRef | null => {
  if (line.tolerance === "none") return null;
  if (line.tolerance !== "own") return published[line.tolerance];
  const limit = line.ownLimit ?? null;
  // What cannot be a limit is refused at its field; while it is typed there is none.
  if (limit === null || !(limit > 0)) return null;
  const isFahrenheit = line.temperatureUnit === "F";
  return {
    kind: "user",
    fixedCelsius: isFahrenheit ? limit / 1.8 : limit,
    base: isFahrenheit ? "fahrenheit" : "celsius",
    source,
  };
};

export const storedTolerance = (line: AskedTolerance): StoredTolerance => {
  if (line.tolerance === "own")
    return {
      toleranceStandard: ownLimitName,
      toleranceClass: `± ${line.ownLimit} ${temperatureUnitLabels[line.temperatureUnit]}`,
    };
  const ref = askedTolerance(line);
  if (ref === null) return { toleranceStandard: null, toleranceClass: null };
  const words = toleranceWords(ref);
  return { toleranceStandard: words.standard, toleranceClass: words.class };
};

const isPublishedChoice = (choice: string): choice is keyof typeof published =>
  Object.hasOwn(published, choice);

/** The columns read back. A word that no order could have written is a fault of ours, and said so. */
export const readTolerance = (
  { toleranceStandard, toleranceClass }: StoredTolerance,
  temperatureUnit: TemperatureUnit,
): AskedTolerance => {
  if (toleranceStandard === null || toleranceClass === null) return { tolerance: "none", temperatureUnit };
  if (toleranceStandard === ownLimitName) {
    const limit = Number(/^± (\S+) °[CF]$/.exec(toleranceClass)?.[1] ?? Number.NaN);
    if (limit > 0) return { tolerance: "own", ownLimit: limit, temperatureUnit };
  }
  for (const [choice, ref] of Object.entries(published))
    if (ref.standard === toleranceStandard && ref.class === toleranceClass && isPublishedChoice(choice))
      return { tolerance: choice, temperatureUnit };
  throw new Error(`An order line asks for an unknown tolerance: ${toleranceStandard}, ${toleranceClass}.`);
};
