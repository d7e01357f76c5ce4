import { cholesky } from "../number/cholesky";
import { sum } from "../number/sum";
import { found, type Outcome, refused } from "../outcome";
import { type ChosenDegree, chooseDegree, type DegreeRule } from "./choose-degree";
import type {
  BelowAgreement,
  DeviationFunction,
  DeviationQuantity,
  DeviationUncertaintyMethod,
} from "./deviation-function";

export type DeviationFitInput = {
  readonly quantity: DeviationQuantity;
  /** Measured points: deviation in µV or °C, and the standard uncertainty of what is the point's own, above 0. */
  readonly points: readonly { readonly celsius: number; readonly value: number; readonly own: number }[];
  /** V of the points' values in the square of their unit, own parts included: `pointCovariance` makes it. */
  readonly covariance: readonly (readonly number[])[];
  readonly isThroughZero: boolean;
  readonly degreeRule: DegreeRule;
  readonly uncertaintyMethod: DeviationUncertaintyMethod;
  /** Own parts as stated, as the scatter about the curve shows them, or whichever is larger. */
  readonly scatter: "as-stated" | "from-residuals" | "larger";
  readonly allowBelow: BelowAgreement | null;
};

/** Rounding of own² against the diagonal it was summed into. */
const ROUNDING = 1e-9;

/**
 * Fits D(t) = Σ aᵢ·tⁱ to measured deviations, with weights from the points' own parts alone, and carries their whole
 * covariance V along: coefficients' covariance (XᵀWX)⁻¹XᵀW·V·[(XᵀWX)⁻¹XᵀW]ᵀ (JCGM 102:2011, 6.2.1.3, from memory; GUM
 * H.3 is the case without shared errors). Errors shared by all points do not average away. Generalised least squares
 * with V is not used: through zero it lets the constraint absorb the shared error. t in °C; D in µV or °C.
 * Problems: those of `chooseDegree` and `cholesky`; `too-few`; `not-finite`; `not-applicable` for an own part that is not
 * above 0 or exceeds its variance in V; `outside-range` for an agreement below that does not lie below the points.
 */
export function fitDeviation(input: DeviationFitInput): Outcome<DeviationFunction> {
  const refusal = check(input);
  if (refusal) return refusal;
  const { points, isThroughZero } = input;
  const celsius = points.map((point) => point.celsius);
  const own = points.map((point) => point.own);
  const values = points.map((point) => point.value);
  const chosen = chooseDegree({ celsius, values, own, isThroughZero, rule: input.degreeRule });
  if (!chosen.ok) return chosen;
  const { fit } = chosen.value;
  const scatterFactor = scatterOf(input.scatter, fit.chiSquare / fit.degreesOfFreedom);
  const factor = uncertaintyFactor(input, chosen.value, scatterFactor);
  if (!factor.ok) return factor;
  const lowestMeasuredCelsius = Math.min(...celsius);
  const zero = isThroughZero ? [0] : [];
  return found({
    quantity: input.quantity,
    isThroughZero,
    degree: chosen.value.degree,
    coefficients: [...zero, ...fit.coefficients],
    uncertaintyFactor: factor.value,
    uncertaintyMethod: input.uncertaintyMethod,
    common: commonPart(input),
    fromCelsius: input.allowBelow?.downToCelsius ?? lowestMeasuredCelsius,
    toCelsius: Math.max(...celsius),
    lowestMeasuredCelsius,
    below: input.allowBelow,
    points: points.map((point, i) => {
      const residual = fit.residuals[i] as number;
      return {
        celsius: point.celsius,
        value: point.value,
        fitted: point.value - residual,
        residual,
        normalisedResidual: residual / point.own,
      };
    }),
    chiSquare: fit.chiSquare,
    degreesOfFreedom: fit.degreesOfFreedom,
    residualDeviation: Math.sqrt(sum(fit.residuals.map((r) => r * r)) / fit.degreesOfFreedom),
    scatterFactor,
    degreesTried: chosen.value.tried,
    isDegreeRuleMet: chosen.value.isRuleMet,
  });
}

function check(input: DeviationFitInput): ReturnType<typeof refused> | null {
  const { points, covariance, allowBelow } = input;
  if (points.length === 0) return refused("too-few", "a deviation function needs measured points");
  if (covariance.length !== points.length) {
    return refused("not-applicable", `a covariance of ${covariance.length} rows for ${points.length} points`);
  }
  for (const [i, { celsius, value, own }] of points.entries()) {
    if (![celsius, value, own].every(Number.isFinite))
      return refused("not-finite", `point ${i + 1} is not a number`);
    if (!(own > 0)) {
      return refused("not-applicable", `the point at ${celsius} °C needs an own uncertainty above zero`);
    }
    const variance = covariance[i]?.[i] as number;
    if (own * own > variance * (1 + ROUNDING)) {
      return refused(
        "not-applicable",
        `the point at ${celsius} °C has a larger own part than its variance holds`,
      );
    }
  }
  const lowest = Math.min(...points.map(({ celsius }) => celsius));
  if (allowBelow && !(allowBelow.downToCelsius <= lowest)) {
    return refused(
      "outside-range",
      `agreed down to ${allowBelow.downToCelsius} °C, measured from ${lowest} °C`,
    );
  }
  return null;
}

/** √(χ²/ν), Birge's ratio (R. T. Birge, Phys. Rev. 40 (1932) 207, from memory), or 1, by the choice made. */
function scatterOf(choice: DeviationFitInput["scatter"], reducedChiSquare: number): number {
  const ratio = Math.sqrt(reducedChiSquare);
  if (choice === "from-residuals") return ratio;
  return choice === "larger" ? Math.max(1, ratio) : 1;
}

/** F = M·L with V = L·Lᵀ, one row for each power, so that u(t)² = |Fᵀ·(1, t, t² …)|² never comes out negative. */
function uncertaintyFactor(
  input: DeviationFitInput,
  { fit }: ChosenDegree,
  scatterFactor: number,
): Outcome<readonly (readonly number[])[]> {
  const isPropagated = input.uncertaintyMethod === "propagated";
  const extra = scatterFactor * scatterFactor - 1;
  // V is looked at in both methods: what is no covariance is refused in both.
  const whole = cholesky(input.covariance);
  if (!whole.ok) return whole;
  const covariance = input.points.map(({ own }, i) =>
    input.points.map((_, j) => {
      const square = i === j ? own * own : 0;
      if (!isPropagated) return square * (1 + extra);
      return ((input.covariance[i] as readonly number[])[j] as number) + extra * square;
    }),
  );
  const lower = cholesky(covariance);
  if (!lower.ok) return lower;
  const factor = fit.map.map((row) =>
    row.map((_, k) => sum(row.map((m, i) => m * ((lower.value[i] as readonly number[])[k] as number)))),
  );
  return found(input.isThroughZero ? [input.points.map(() => 0), ...factor] : factor);
}

/** √(V_ii − own²) at each point, ascending in temperature; the largest where a temperature comes twice. */
function commonPart(input: DeviationFitInput): { x: number; y: number }[] {
  const nodes: { x: number; y: number }[] = [];
  const parts = input.points.map(({ celsius, own }, i) => ({
    x: celsius,
    y: Math.sqrt(Math.max(0, ((input.covariance[i] as readonly number[])[i] as number) - own * own)),
  }));
  for (const part of parts.sort((a, b) => a.x - b.x)) {
    const last = nodes.at(-1);
    if (last && last.x === part.x) last.y = Math.max(last.y, part.y);
    else nodes.push(part);
  }
  return nodes;
}
