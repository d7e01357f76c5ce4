import { interpolate } from "../comparison/interpolate";
import { polynomial, polynomialSlope } from "../number/polynomial";
import { sum } from "../number/sum";
import { found, type Outcome, refused } from "../outcome";
import { powersOf } from "./choose-degree";
import type { DeviationFunction } from "./deviation-function";

export type DeviationAt = {
  /** D(t), µV or °C by the function's quantity. */
  readonly value: number;
  /** dD/dt, the same per °C. */
  readonly slope: number;
  readonly standardUncertainty: number;
  /** Below the lowest measured point, as scope and customer agreed. */
  readonly isBelowMeasured: boolean;
};

/** A temperature that was converted from °F may stand a last bit beyond the end. */
const SLACK_CELSIUS = 1e-9;

/**
 * D(t) = Σ aᵢ·tⁱ with u(t)² = gᵀVg, gᵀ = (1, t, t² …)·(XᵀWX)⁻¹XᵀW (JCGM 102:2011, 6.2.1.3, from memory; law of
 * propagation, JCGM 100:2008, eq. 13); by the method of `own-plus-common` u² = own part through the fit² + common part²,
 * the latter linear between the points. t in °C.
 * Problems: `not-finite`; `outside-range` above the highest measured point, below the lowest or what was agreed.
 */
export function deviationAt(deviation: DeviationFunction, celsius: number): Outcome<DeviationAt> {
  if (!Number.isFinite(celsius)) return refused("not-finite", `${celsius} is not a temperature`);
  const { fromCelsius, toCelsius, coefficients } = deviation;
  if (celsius > toCelsius + SLACK_CELSIUS) {
    return refused("outside-range", `${celsius} °C lies above the highest measured point, ${toCelsius} °C`);
  }
  if (celsius < fromCelsius - SLACK_CELSIUS) {
    const end = deviation.below ? "what was agreed" : "the lowest measured point";
    return refused("outside-range", `${celsius} °C lies below ${end}, ${fromCelsius} °C`);
  }
  const powers = powersOf(celsius, deviation.degree);
  const rows = deviation.uncertaintyFactor;
  const columns = rows[0] as readonly number[];
  const own = columns.map((_, k) => {
    const effect = sum(powers.map((power, i) => power * ((rows[i] as readonly number[])[k] as number)));
    return effect * effect;
  });
  const isApart = deviation.uncertaintyMethod === "own-plus-common";
  const common = isApart ? interpolate(deviation.common, celsius).value : 0;
  return found({
    value: polynomial(coefficients, celsius),
    slope: polynomialSlope(coefficients, celsius),
    standardUncertainty: Math.sqrt(sum(own) + common * common),
    isBelowMeasured: celsius < deviation.lowestMeasuredCelsius - SLACK_CELSIUS,
  });
}

/** The coefficients' covariance F·Fᵀ, row and column i for the power i (units: those of aᵢ·aⱼ); the common part, if
 * taken apart, is not in it. Source as `deviationAt`. No error cases. */
export function coefficientCovariance(deviation: DeviationFunction): readonly (readonly number[])[] {
  const rows = deviation.uncertaintyFactor;
  return rows.map((a) => rows.map((b) => sum(a.map((x, k) => x * (b[k] as number)))));
}
