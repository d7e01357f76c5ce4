import { normalQuantile } from "../number/normal";
import { studentQuantile } from "../number/student";
import { found, type Outcome, refused } from "../outcome";
import { nonconformanceProbability } from "./conformance-probability";

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
  /** w from the specific risk of false acceptance at the acceptance limit; binary (4.2.2) or not (4.2.3). */
  | { readonly kind: "target-risk"; readonly falseAcceptance: number; readonly isBinary: boolean };

export type RuleUncertainty = {
  readonly standardUncertaintyCelsius: number;
  readonly expandedCelsius: number;
  /** null or absent: infinitely many. */
  readonly degreesOfFreedom?: number | null;
};

export type GuardBand = {
  /** w = TL − AL, °C; TL or more where no acceptance zone is left. */
  readonly guardBandCelsius: number;
  /** The tolerance at which the same rule and u leave no zone any more, °C; not above 0: every tolerance leaves one. */
  readonly closingCelsius: number;
};

/** Below this 1 − 2·PFA loses digits that the quantile needs; nobody agrees on one in a million. */
const SMALLEST_RISK = 1e-6;

/** Each halves the stretch in which w of a target risk lies; that stretch is shorter than w to start with. */
const HALVINGS = 60;

/**
 * Guard band w = TL − AL, °C (ILAC-G8:09/2019, 4.2; JCGM 106:2012, 8.3.2). Simple acceptance: 0. By ratio: r·U. By
 * target risk: the smallest w with 1 − p_c ≤ PFA at AL, p_c between both limits (JCGM 106:2012, 7.4). In a wide
 * tolerance that is z·u with z the one-sided quantile of 1 − PFA, normal or Student's t with ν (cut to a whole number):
 * 1 % is 2.33·u, with ν = 4 it is 3.75·u. With TL/u below about five the far tail takes its part and w grows; where even
 * an error of zero has p_c < 1 − PFA there is no zone, w ≥ TL.
 * Symbols: u, U, TL = `toleranceCelsius` in °C, ν as `RuleUncertainty`; TL infinite: one limit only. Refused: TL not above
 * 0; u, U or r not finite or u, U below 0; r below 0 in the non-binary rule, whose conditional zones would overlap; PFA
 * outside 1e-6 to 0.5; ν below 1; a largest ratio not above 0.
 */
export function guardBand(
  rule: ConformityRule,
  uncertainty: RuleUncertainty,
  toleranceCelsius: number,
): Outcome<GuardBand> {
  const { standardUncertaintyCelsius: u, expandedCelsius: expanded } = uncertainty;
  if (!(toleranceCelsius > 0)) {
    return refused("outside-range", `± ${toleranceCelsius} °C: a tolerance must be above zero`);
  }
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
        ? sameForAny(rule.guardBandRatio * expanded)
        : ratioRefused(rule.guardBandRatio);
    case "guarded-binary":
      return Number.isFinite(rule.guardBandRatio)
        ? sameForAny(rule.guardBandRatio * expanded)
        : ratioRefused(rule.guardBandRatio);
    case "target-risk":
      return riskBand(rule.falseAcceptance, u, nu, toleranceCelsius);
  }
}

/** A band that does not ask for the tolerance. */
function sameForAny(w: number): Outcome<GuardBand> {
  return found({ guardBandCelsius: w, closingCelsius: w });
}

function simpleBand(largestRatio: number | undefined): Outcome<GuardBand> {
  if (largestRatio === undefined || largestRatio > 0) return sameForAny(0);
  return refused("outside-range", `U at most ${largestRatio} of the tolerance: the part must be above zero`);
}

function ratioRefused(ratio: number) {
  return refused("outside-range", `w = ${ratio}·U: this rule cannot have such a guard band`);
}

function riskBand(risk: number, u: number, nu: number | null, tolerance: number): Outcome<GuardBand> {
  if (!(risk >= SMALLEST_RISK && risk <= 0.5)) {
    return refused("outside-range", `a risk of ${risk}: it must lie between ${SMALLEST_RISK} and 0.5`);
  }
  // At zero error each tail holds half of what lies outside.
  const closing = oneSidedQuantile(risk / 2, nu) * u;
  if (closing >= tolerance) return found({ guardBandCelsius: closing, closingCelsius: closing });
  // Measured from the near limit, so that a wide or infinite tolerance loses no digits.
  const isKeptBy = (w: number) => nonconformanceProbability(-w, u, -2 * tolerance, 0, nu) <= risk;
  // One tail alone asks for `low`; at `high` neither of the two holds more than half the risk.
  let low = oneSidedQuantile(risk, nu) * u;
  let high = closing;
  if (isKeptBy(low)) return found({ guardBandCelsius: low, closingCelsius: closing });
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    if (isKeptBy(middle)) high = middle;
    else low = middle;
  }
  return found({ guardBandCelsius: high, closingCelsius: closing });
}

function oneSidedQuantile(risk: number, nu: number | null): number {
  // Half the risk on each side is the middle itself: no guard band.
  if (risk === 0.5) return 0;
  const normal = -normalQuantile(risk);
  return nu === null ? normal : studentQuantile(1 - 2 * risk, Math.floor(nu * (1 + 1e-9)), normal);
}
