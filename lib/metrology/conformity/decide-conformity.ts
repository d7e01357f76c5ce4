import { conformanceProbability } from "./conformance-probability";

export type ConformityVerdict = "pass" | "conditional-pass" | "conditional-fail" | "fail" | "not-decidable";

export type ConformityRule =
  | { readonly kind: "simple" }
  | { readonly kind: "guarded"; readonly guardBandRatio: number };

export type ConformityInput = {
  readonly errorCelsius: number;
  readonly standardUncertaintyCelsius: number;
  readonly expandedCelsius: number;
  /** Half-width of the tolerance about zero error. */
  readonly toleranceCelsius: number;
  readonly rule: ConformityRule;
};

export type ConformityDecision = {
  readonly verdict: ConformityVerdict;
  /** Half-width of the acceptance zone; null when it is empty. */
  readonly acceptanceCelsius: number | null;
  readonly probability: number;
};

/**
 * Decision on unrounded values. Simple acceptance (ILAC-G8:09/2019, 4.2.1): w = 0. With a guard band
 * (4.2.3, the non-binary wording): w = r·U, AL = TL − w; pass up to AL, conditional pass up to TL,
 * conditional fail up to TL + w, fail beyond; limits themselves belong to the better side. If w reaches
 * TL no result could pass, and nothing is decided.
 */
export function decideConformity(input: ConformityInput): ConformityDecision {
  const { errorCelsius, toleranceCelsius: limit, rule } = input;
  const size = Math.abs(errorCelsius);
  const probability = conformanceProbability(errorCelsius, input.standardUncertaintyCelsius, -limit, limit);
  if (rule.kind === "simple") {
    return { verdict: size <= limit ? "pass" : "fail", acceptanceCelsius: limit, probability };
  }
  const guardBand = rule.guardBandRatio * input.expandedCelsius;
  if (guardBand >= limit) return { verdict: "not-decidable", acceptanceCelsius: null, probability };
  const acceptance = limit - guardBand;
  return {
    verdict: guardedVerdict(size, acceptance, limit, guardBand),
    acceptanceCelsius: acceptance,
    probability,
  };
}

function guardedVerdict(
  size: number,
  acceptance: number,
  limit: number,
  guardBand: number,
): ConformityVerdict {
  if (size <= acceptance) return "pass";
  if (size <= limit) return "conditional-pass";
  return size <= limit + guardBand ? "conditional-fail" : "fail";
}
