import { found, type Outcome, refused } from "../outcome";
import type { ToleranceRule, ToleranceRuleSet } from "./rule-set";

/** The one class that a customer's own limits make. */
export const USER_CLASS = "agreed";

/**
 * A customer's own limits, as agreed in the order. `fixed`: ± one value. `fixed-or-percent`: the larger of a value and a
 * percentage of t, in the unit the customer uses. `bands`: ± a value from one temperature to another, each on its own.
 */
export type UserLimits =
  | {
      readonly kind: "fixed";
      readonly fixed: number;
      readonly unit: "°C" | "°F";
      readonly fromCelsius: number;
      readonly toCelsius: number;
    }
  | {
      readonly kind: "fixed-or-percent";
      readonly fixed: number;
      readonly percent: number;
      readonly unit: "°C" | "°F";
      readonly fromCelsius: number;
      readonly toCelsius: number;
    }
  | {
      readonly kind: "bands";
      readonly unit: "°C" | "°F";
      readonly bands: readonly {
        readonly fromCelsius: number;
        readonly toCelsius: number;
        readonly fixed: number;
      }[];
    };

type Named = {
  readonly id: string;
  readonly title: string;
  readonly edition: string;
  readonly source: string;
};

/**
 * A rule set of one type and one class (`USER_CLASS`) from a customer's own limits (ISO/IEC 17025:2017, 7.1.3: the
 * specification is defined and agreed before measurement). Between bands nothing is interpolated: where none is
 * given there is no tolerance, and where two overlap the smaller holds.
 * Units: fixed parts and the base of the percentage as `unit` says, ranges in °C. Refused by name: a number that is not
 * finite, a range turned round, a limit that is nowhere above 0, a percentage or value below 0, no band at all.
 */
export function userLimits(named: Named, type: string, limits: UserLimits): Outcome<ToleranceRuleSet> {
  const rules = rulesOf(limits);
  if (rules.length === 0) return refused("too-few", "no band is given, so there is no limit anywhere");
  for (const rule of rules) {
    const numbers = [rule.fromCelsius, rule.toCelsius, rule.fixed, rule.percent];
    if (!numbers.every((x) => Number.isFinite(x))) {
      return refused("not-finite", `${numbers.join(", ")}: a limit needs numbers throughout`);
    }
    if (rule.fromCelsius > rule.toCelsius) {
      return refused("outside-range", `from ${rule.fromCelsius} °C to ${rule.toCelsius} °C is turned round`);
    }
    if (rule.fixed < 0 || rule.percent < 0 || rule.fixed + rule.percent === 0) {
      return refused("outside-range", `± ${rule.fixed} or ${rule.percent} %: a limit must be above zero`);
    }
  }
  return found({ ...named, types: { [type]: { [USER_CLASS]: rules } } });
}

function rulesOf(limits: UserLimits): readonly ToleranceRule[] {
  const { unit } = limits;
  const base = { unit, origin: 0, base: 0 };
  switch (limits.kind) {
    case "fixed":
      return [{ ...base, ...rangeOf(limits), fixed: limits.fixed, percent: 0 }];
    case "fixed-or-percent":
      return [{ ...base, ...rangeOf(limits), fixed: limits.fixed, percent: limits.percent }];
    case "bands":
      return limits.bands.map((band) => ({ ...base, ...rangeOf(band), fixed: band.fixed, percent: 0 }));
  }
}

function rangeOf({ fromCelsius, toCelsius }: { readonly fromCelsius: number; readonly toCelsius: number }) {
  return { fromCelsius, toCelsius };
}
