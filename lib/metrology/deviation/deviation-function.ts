import type { TableNode } from "../comparison/interpolate";
import type { DegreeTried } from "./choose-degree";

/** What is fitted: the emf's deviation E_X − E_table in µV, or the error of temperature (indication − reference) in °C. */
export type DeviationQuantity = "emf" | "temperature";

/**
 * `propagated`: u(t)² = gᵀVg with the whole covariance V of the points. `own-plus-common`: each point's own part goes
 * through the fit, the part common to all is taken unreduced. The procedure names which one it uses.
 */
export type DeviationUncertaintyMethod = "propagated" | "own-plus-common";

/** Agreed by scope and customer, in words: the function may be used below its lowest measured point, down to here. */
export type BelowAgreement = { readonly downToCelsius: number; readonly agreement: string };

export type FittedPoint = {
  readonly celsius: number;
  readonly value: number;
  readonly fitted: number;
  /** value − fitted, in the unit of the quantity. */
  readonly residual: number;
  /** residual / the point's own standard uncertainty. */
  readonly normalisedResidual: number;
};

/** A fitted deviation function: plain data, so that it can be stored and evaluated again. Made by `fitDeviation`. */
export type DeviationFunction = {
  readonly quantity: DeviationQuantity;
  readonly isThroughZero: boolean;
  readonly degree: number;
  /** D(t) = Σ aᵢ·tⁱ, index = power; a₀ is 0 through zero. Unit: that of the quantity over °Cⁱ. */
  readonly coefficients: readonly number[];
  /** One row for each power: the coefficients' covariance is F·Fᵀ. */
  readonly uncertaintyFactor: readonly (readonly number[])[];
  readonly uncertaintyMethod: DeviationUncertaintyMethod;
  /** Standard uncertainty of the part common to the points, at each of them, ascending: x in °C. */
  readonly common: readonly TableNode[];
  /** Where it may be used: from the lowest measured point, or what was agreed, to the highest measured point. */
  readonly fromCelsius: number;
  readonly toCelsius: number;
  readonly lowestMeasuredCelsius: number;
  readonly below: BelowAgreement | null;
  readonly points: readonly FittedPoint[];
  /** Σ (residual/own uncertainty)², as stated. */
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** √(Σ residual²/ν), in the unit of the quantity: the scatter about the curve. */
  readonly residualDeviation: number;
  /** What the points' own uncertainties were multiplied by, because of the scatter about the curve. */
  readonly scatterFactor: number;
  readonly degreesTried: readonly DegreeTried[];
  /** False when no allowed degree brings the residuals within the limit: the highest was then taken. */
  readonly isDegreeRuleMet: boolean;
};
