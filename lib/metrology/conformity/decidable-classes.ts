import { found, type Outcome } from "../outcome";
import { decidability } from "./decidability";
import type { ConformityRule, RuleUncertainty } from "./guard-band";
import type { ToleranceRuleSet } from "./rule-set";
import { toleranceIn } from "./tolerance-in";

export type DecidableClass = {
  readonly toleranceClass: string;
  readonly toleranceCelsius: number;
  /** Half-width of the acceptance zone that the class leaves, °C. */
  readonly acceptanceCelsius: number;
};

/**
 * Which classes of a rule set could be judged at a temperature with the expected U, in the set's own order: what to offer
 * a customer whose wish is not decidable (ISO/IEC 17025:2017, 7.1.1; see `decidability`).
 * Symbols: `celsius` = t in °C; u, U in °C. Classes that are not defined there are left out; the list may be empty.
 * Refused: what `guardBand` refuses of rule and uncertainty.
 */
export function decidableClasses(
  set: ToleranceRuleSet,
  type: string,
  celsius: number,
  rule: ConformityRule,
  expected: RuleUncertainty,
): Outcome<readonly DecidableClass[]> {
  const classes: DecidableClass[] = [];
  for (const toleranceClass of classesOf(set, type)) {
    const tolerance = toleranceIn(set, type, toleranceClass, celsius);
    if (tolerance.kind === "not-defined") continue;
    const judged = decidability(tolerance.celsius, rule, expected);
    if (!judged.ok) return judged;
    const { acceptanceCelsius } = judged.value;
    if (acceptanceCelsius === null) continue;
    classes.push({ toleranceClass, toleranceCelsius: tolerance.celsius, acceptanceCelsius });
  }
  return found(classes);
}

function classesOf(set: ToleranceRuleSet, type: string): readonly string[] {
  return Object.hasOwn(set.types, type) ? Object.keys(set.types[type] as object) : [];
}
