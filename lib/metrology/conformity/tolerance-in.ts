import { roundHalfEven } from "../number/decimal";
import type { ToleranceRule, ToleranceRuleSet } from "./rule-set";

export type Tolerance =
  | { readonly kind: "defined"; readonly celsius: number; readonly note?: string }
  | { readonly kind: "not-defined"; readonly reason: string };

/**
 * Tolerance of a class at a temperature by a rule set (IEC 60584-1:2013, 6, or as the set's own source says): the larger
 * of the fixed part and the part that grows, max(fixed, base + percent/100·|t − origin|).
 * Symbols: `type` and `toleranceClass` as the set keys them, `celsius` = t in °C (t90). Result: half-width about the
 * reference function, °C; a rule whose unit is °F is evaluated in °F and divided by 1.8.
 * Not defined, with the reason in words: a type or class the set does not have, a temperature outside the class's range
 * (nothing is extrapolated past its end), a temperature that is not a number.
 */
export function toleranceIn(
  set: ToleranceRuleSet,
  type: string,
  toleranceClass: string,
  celsius: number,
): Tolerance {
  const rules = ownEntry(ownEntry(set.types, type), toleranceClass);
  if (!rules) return notDefined(`${set.title} has no class ${toleranceClass} for type ${type}`);
  const here = rules.filter(({ fromCelsius, toCelsius }) => celsius >= fromCelsius && celsius <= toCelsius);
  let smallest: Tolerance = notDefined(
    `${set.title} defines class ${toleranceClass} of type ${type} from ${rules.map(rangeText).join(" and from ")}, not at ${celsiusText(celsius)}`,
  );
  for (const rule of here) {
    const half = halfWidth(rule, celsius);
    if (smallest.kind === "not-defined" || half < smallest.celsius) {
      smallest = {
        kind: "defined",
        celsius: half,
        ...(rule.note === undefined ? {} : { note: rule.note }),
      };
    }
  }
  return smallest;
}

function notDefined(reason: string): Tolerance {
  return { kind: "not-defined", reason };
}

/** Own keys only: a type called "constructor" is no type. */
function ownEntry<Value>(table: Readonly<Record<string, Value>> | undefined, key: string): Value | undefined {
  return table && Object.hasOwn(table, key) ? table[key] : undefined;
}

function rangeText({ fromCelsius, toCelsius }: ToleranceRule): string {
  return `${celsiusText(fromCelsius)} to ${celsiusText(toCelsius)}`;
}

/** To the hundredth, as far as it has one: 600 °F is 315.56 °C. Only words; what is judged is not rounded. */
function celsiusText(celsius: number): string {
  return `${Number.isFinite(celsius) ? Number(roundHalfEven(celsius, 2)) : celsius} °C`;
}

function halfWidth(rule: ToleranceRule, celsius: number): number {
  const t = rule.unit === "°F" ? celsius * 1.8 + 32 : celsius;
  // Percent times temperature first: 0.75·1000/100 is 7.5 exactly, 0.0075·1000 is not always.
  const growing = rule.base + (rule.percent * Math.abs(t - rule.origin)) / 100;
  const larger = Math.max(rule.fixed, growing);
  return rule.unit === "°F" ? larger / 1.8 : larger;
}
