import { found, type Outcome, refused } from "../outcome";
import { conformanceProbability } from "./conformance-probability";
import { type ConformityRule, guardBand } from "./guard-band";

export type ConformityVerdict = "pass" | "conditional-pass" | "conditional-fail" | "fail" | "not-decidable";

export type ConformityInput = {
  readonly errorCelsius: number;
  readonly standardUncertaintyCelsius: number;
  readonly expandedCelsius: number;
  /** Effective degrees of freedom of u; null or absent: infinitely many. */
  readonly degreesOfFreedom?: number | null;
  /** Half-width of the tolerance about zero error. */
  readonly toleranceCelsius: number;
  readonly rule: ConformityRule;
};

export type ConformityDecision = {
  readonly verdict: ConformityVerdict;
  /** w = TL − AL, °C; TL or more where no acceptance zone is left. */
  readonly guardBandCelsius: number;
  /** Half-width of the acceptance zone; null when it is empty. */
  readonly acceptanceCelsius: number | null;
  /** p_c: probability that the true error lies inside the tolerance. */
  readonly probability: number;
};

/**
 * Statement of conformity on unrounded values (ILAC-G8:09/2019, 4.2.1 to 4.2.3): AL = TL − w. Binary: pass up to AL, fail
 * beyond. Non-binary: pass up to AL, conditional pass up to TL, conditional fail up to TL + w, fail beyond; the limits
 * themselves belong to the better side. If w reaches TL no result could pass, and nothing is decided, however large the
 * error; likewise where a simple rule asks for a smaller U than there is.
 * Symbols: error D, u, U, TL in °C, ν without unit; `probability` = p_c (JCGM 106:2012, 7.4), by Student's t where ν is
 * given; a pass by a target risk never has p_c below 1 − PFA. More uncertainty never gives a better verdict, but for the rule with r below 0, which is made to do that.
 * Refused: D or TL not finite, and whatever `guardBand` refuses.
 */
export function decideConformity(input: ConformityInput): Outcome<ConformityDecision> {
  const { errorCelsius, toleranceCelsius: limit, rule } = input;
  if (!(Number.isFinite(errorCelsius) && Number.isFinite(limit))) {
    return refused("not-finite", `an error of ${errorCelsius} °C within ± ${limit} °C cannot be judged`);
  }
  const band = guardBand(rule, input, limit);
  if (!band.ok) return band;
  const { guardBandCelsius: w } = band.value;
  const probability = conformanceProbability(
    errorCelsius,
    input.standardUncertaintyCelsius,
    -limit,
    limit,
    input.degreesOfFreedom,
  );
  if (w >= limit || isTooUncertain(rule, input.expandedCelsius, limit)) {
    return found({ verdict: "not-decidable", guardBandCelsius: w, acceptanceCelsius: null, probability });
  }
  return found({
    verdict: verdictAt(Math.abs(errorCelsius), limit, w, isBinary(rule)),
    guardBandCelsius: w,
    acceptanceCelsius: limit - w,
    probability,
  });
}

/** A simple rule may ask for a U of at most so much of the tolerance. */
function isTooUncertain(rule: ConformityRule, expanded: number, limit: number): boolean {
  const largestRatio = rule.kind === "simple" ? rule.largestRatio : undefined;
  return expanded > (largestRatio ?? Number.POSITIVE_INFINITY) * limit;
}

function isBinary(rule: ConformityRule): boolean {
  return rule.kind === "target-risk" ? rule.isBinary : rule.kind !== "guarded";
}

function verdictAt(size: number, limit: number, w: number, binary: boolean): ConformityVerdict {
  if (size <= limit - w) return "pass";
  if (binary) return "fail";
  if (size <= limit) return "conditional-pass";
  return size <= limit + w ? "conditional-fail" : "fail";
}
