import { astmE230 } from "@/lib/metrology/conformity/astm-e230";
import { iec60584 } from "@/lib/metrology/conformity/iec-60584-1";
import type { ToleranceRuleSet } from "@/lib/metrology/conformity/rule-set";
import { type Tolerance, toleranceIn } from "@/lib/metrology/conformity/tolerance-in";
import { USER_CLASS, userLimits } from "@/lib/metrology/conformity/user-limits";
import { roundHalfEven } from "@/lib/metrology/number/decimal";
import type { ToleranceRef, TypeLetter } from "./schema";

export const ownLimitName = "customer's own limit";

/** A customer's limit holds wherever it was ordered: the span of what an order may ask at all. */
const everywhere = { fromCelsius: -273.15, toCelsius: 3000 } as const;

/** The published set that a tolerance refers to; null for a customer's own limit, which belongs to none. */
export const publishedSetOf = (ref: ToleranceRef): ToleranceRuleSet | null => {
  if ("kind" in ref) return null;
  return ref.standard === "ASTM E230/E230M" ? astmE230 : iec60584;
};

/** Tolerance at a temperature by whatever was agreed: a class of a standard, or the customer's own limit. */
export const toleranceAt = (ref: ToleranceRef, type: TypeLetter, celsius: number): Tolerance => {
  if (!("kind" in ref)) return toleranceIn(publishedSetOf(ref) ?? iec60584, type, ref.class, celsius);
  const isFahrenheit = ref.base === "fahrenheit";
  const name = { id: "user", title: ownLimitName, edition: "", source: ref.source };
  // Without a percentage the base does not matter, and the limit is not sent through °F and back.
  const set =
    ref.percent === undefined
      ? userLimits(name, type, { kind: "fixed", fixed: ref.fixedCelsius, unit: "°C", ...everywhere })
      : userLimits(name, type, {
          kind: "fixed-or-percent",
          fixed: isFahrenheit ? ref.fixedCelsius * 1.8 : ref.fixedCelsius,
          percent: ref.percent,
          unit: isFahrenheit ? "°F" : "°C",
          ...everywhere,
        });
  if (!set.ok) return { kind: "not-defined", reason: set.problem.message };
  return toleranceIn(set.value, type, USER_CLASS, celsius);
};

/** "3", "2.7778": no more than four decimals, none that says nothing. */
const plain = (value: number): string => roundHalfEven(value, 4).replace(/\.?0+$/, "");

/** What stands beside a verdict: standard and class, or the customer's own limit in the unit it was agreed in. */
export const toleranceWords = (ref: ToleranceRef): { readonly standard: string; readonly class: string } => {
  if (!("kind" in ref)) return { standard: ref.standard, class: ref.class };
  const fixed =
    ref.base === "fahrenheit" ? `± ${plain(ref.fixedCelsius * 1.8)} °F` : `± ${plain(ref.fixedCelsius)} °C`;
  const percent =
    ref.percent === undefined
      ? ""
      : ` or ± ${plain(ref.percent)} % of the temperature in ${ref.base === "fahrenheit" ? "°F" : "°C"}, whichever is larger`;
  return { standard: ownLimitName, class: `${fixed}${percent}` };
};
