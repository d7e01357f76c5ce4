import { normalQuantile } from "../number/normal";
import { studentQuantile } from "../number/student";
import { found, type Outcome, refused } from "../outcome";

/** A decision rule, agreed before measurement (ISO/IEC 17025:2017, 7.1.3); clauses of ILAC-G8:09/2019. */
export type ConformityRule =
  /**
   * 4.2.1, binary, w = 0. `largestRatio`: the rule asks for U ≤ that part of the tolerance (a "TUR 4:1" rule is 0.25) and
   * decides nothing beyond; without it simple acceptance asks nothing of U.
   */
  | { readonly kind: "simple"; readonly largestRatio?: number }
  /** 4.2.3, non-binary: pass, conditional pass, conditional fail, fail; w = r·U. */
  | { readonly kind: "guarded"; readonly guardBandRatio: number }
  /** 4.2.2, binary with guard band w = r·U; r below 0 is the "uncritical" rule, which rejects beyond TL + |r|·U only. */
  | { readonly kind: "guarded-binary"; readonly guardBandRatio: number }
  /** w = z·u from the specific risk of false acceptance at the acceptance limit; binary (4.2.2) or not (4.2.3). */
  | { readonly kind: "target-risk"; readonly falseAcceptance: number; readonly isBinary: boolean };

export type RuleUncertainty = {
  readonly standardUncertaintyCelsius: number;
  readonly expandedCelsius: number;
  /** null or absent: infinitely many. */
  readonly degreesOfFreedom?: number | null;
};

/** Below this 1 − 2·PFA loses digits that the quantile needs; nobody agrees on one in a million. */
const SMALLEST_RISK = 1e-6;

/**
 * Guard band w = TL − AL, °C (ILAC-G8:09/2019, 4.2; JCGM 106:2012, 8.3.2). Simple acceptance: 0. By ratio: r·U. By
 * target risk: z·u with z the quantile of 1 − PFA, one-sided, of the normal distribution or of Student's t with ν
 * (cut to a whole number): 1 % is 2.33·u, but with ν = 4 it is 3.75·u.
 * Symbols: u, U in °C, ν as `RuleUncertainty`. Refused: u, U or r not finite or u, U below 0; r below 0 in the non-binary
 * rule, whose conditional zones would overlap; PFA outside 1e-6 to 0.5; ν below 1; a largest ratio not above 0.
 */
export function guardBand(rule: ConformityRule, uncertainty: RuleUncertainty): Outcome<number> {
  const { standardUncertaintyCelsius: u, expandedCelsius: expanded } = uncertainty;
  if (!(Number.isFinite(u) && Number.isFinite(expanded))) {
    return refused("not-finite", `u = ${u}, U = ${expanded}: an uncertainty must be a number`);
  }
  if (u < 0 || expanded < 0) {
    return refused("outside-range", `u = ${u}, U = ${expanded}: an uncertainty is never below zero`);
  }
  const nu = uncertainty.degreesOfFreedom ?? null;
  if (nu !== null && !(nu >= 1)) {
    return refused("too-few", `${nu} degrees of freedom: at least 1 is needed`);
  }
  switch (rule.kind) {
    case "simple":
      return simpleBand(rule.largestRatio);
    case "guarded":
      return rule.guardBandRatio >= 0
        ? found(rule.guardBandRatio * expanded)
        : ratioRefused(rule.guardBandRatio);
    case "guarded-binary":
      return Number.isFinite(rule.guardBandRatio)
        ? found(rule.guardBandRatio * expanded)
        : ratioRefused(rule.guardBandRatio);
    case "target-risk": {
      const z = oneSidedQuantile(rule.falseAcceptance, nu);
      return z.ok ? found(z.value * u) : z;
    }
  }
}

function simpleBand(largestRatio: number | undefined): Outcome<number> {
  if (largestRatio === undefined || largestRatio > 0) return found(0);
  return refused("outside-range", `U at most ${largestRatio} of the tolerance: the part must be above zero`);
}

function ratioRefused(ratio: number) {
  return refused("outside-range", `w = ${ratio}·U: this rule cannot have such a guard band`);
}

function oneSidedQuantile(risk: number, nu: number | null): Outcome<number> {
  if (!(risk >= SMALLEST_RISK && risk <= 0.5)) {
    return refused("outside-range", `a risk of ${risk}: it must lie between ${SMALLEST_RISK} and 0.5`);
  }
  // Half the risk on each side is the middle itself: no guard band.
  if (risk === 0.5) return found(0);
  const normal = -normalQuantile(risk);
  if (nu === null) return found(normal);
  return found(studentQuantile(1 - 2 * risk, Math.floor(nu * (1 + 1e-9)), normal));
}
