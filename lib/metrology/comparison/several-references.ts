import { sum } from "../number/sum";
import { found, type Outcome, refused } from "../outcome";

/** One reference's temperature at the sensor's moment, °C, with its whole standard uncertainty. */
export type ReferenceReading = { readonly celsius: number; readonly standardUncertainty: number };

export type ReferencesMean = {
  readonly celsius: number;
  readonly weights: readonly number[];
  /** u of the weighted mean with all correlations, °C: with r = 1 no smaller than one reference's. */
  readonly standardUncertainty: number;
  readonly agreement: ReferencesAgreement | null;
};

/** The two furthest apart in terms of what their difference may be; null for one reference. */
export type ReferencesAgreement = {
  readonly first: number;
  readonly second: number;
  readonly differenceCelsius: number;
  /** U of the difference, °C: what both share has dropped out. */
  readonly expandedCelsius: number;
  readonly agrees: boolean;
};

export type SeveralReferencesInput = {
  readonly readings: readonly ReferenceReading[];
  /** Correlation coefficients, n × n, ones on the diagonal. */
  readonly correlation: readonly (readonly number[])[];
  /** Equal weights, or 1/u²: never the generalised weights, which can be negative when r is large. */
  readonly weighting: "equal" | "inverse-variance";
  readonly coverageFactor: number;
  /** Of the difference of two places: u of the temperature field between the references, °C. */
  readonly positionStandard: number;
};

/**
 * Mean of several references, u² = ΣΣwᵢwⱼrᵢⱼuᵢuⱼ (JCGM 100:2008, eq. 16), and whether they agree: |tᵢ − tⱼ| ≤ k·√(uᵢ² + uⱼ² − 2rᵢⱼuᵢuⱼ
 * + u_pos²). EA-4/02 S5 (S5.16) uses a fixed 0.3 °C, which raises false alarms in a bare tube. °C.
 * Problems: `too-few`; `not-finite`; `not-applicable` for an uncertainty not above zero, a correlation matrix of another
 * size or beyond ±1, k not above 0, or a position's uncertainty below 0.
 */
export function severalReferences(input: SeveralReferencesInput): Outcome<ReferencesMean> {
  const { readings, weighting } = input;
  const refusal = check(input);
  if (refusal) return refusal;
  const raw = readings.map(({ standardUncertainty: u }) => (weighting === "equal" ? 1 : 1 / (u * u)));
  const total = sum(raw);
  const weights = raw.map((weight) => weight / total);
  const terms = weights.flatMap((a, i) => weights.map((b, j) => a * b * covarianceOf(input, i, j)));
  return found({
    celsius: sum(readings.map(({ celsius }, i) => celsius * (weights[i] as number))),
    weights,
    standardUncertainty: Math.sqrt(Math.max(0, sum(terms))),
    agreement: worstPair(input),
  });
}

function covarianceOf({ readings, correlation }: SeveralReferencesInput, i: number, j: number): number {
  const u = (place: number) => (readings[place] as ReferenceReading).standardUncertainty;
  return ((correlation[i] as readonly number[])[j] as number) * u(i) * u(j);
}

function worstPair(input: SeveralReferencesInput): ReferencesAgreement | null {
  let worst: ReferencesAgreement | null = null;
  let worstExcess = Number.NEGATIVE_INFINITY;
  const { readings, positionStandard: position } = input;
  for (const [second, b] of readings.entries()) {
    for (const [first, a] of readings.slice(0, second).entries()) {
      const square =
        covarianceOf(input, first, first) +
        covarianceOf(input, second, second) -
        2 * covarianceOf(input, first, second);
      const expandedCelsius = input.coverageFactor * Math.sqrt(Math.max(0, square) + position * position);
      const differenceCelsius = b.celsius - a.celsius;
      const excess = Math.abs(differenceCelsius) - expandedCelsius;
      if (excess <= worstExcess) continue;
      worstExcess = excess;
      worst = { first, second, differenceCelsius, expandedCelsius, agrees: excess <= 0 };
    }
  }
  return worst;
}

function check(input: SeveralReferencesInput): ReturnType<typeof refused> | null {
  const { readings, correlation } = input;
  if (readings.length === 0) return refused("too-few", "no reference");
  for (const { celsius, standardUncertainty: u } of readings) {
    if (!Number.isFinite(celsius) || !Number.isFinite(u))
      return refused("not-finite", "a reference is not a number");
    if (!(u > 0)) return refused("not-applicable", "a reference needs an uncertainty above zero");
  }
  const isSquare =
    correlation.length === readings.length && correlation.every((row) => row.length === readings.length);
  if (!isSquare || !correlation.flat().every((r) => Math.abs(r) <= 1)) {
    return refused("not-applicable", "correlation coefficients: one for each pair, from −1 to 1");
  }
  if (!(input.coverageFactor > 0 && input.positionStandard >= 0)) {
    return refused("not-applicable", "a coverage factor above 0 and a position's uncertainty from 0 up");
  }
  return null;
}
