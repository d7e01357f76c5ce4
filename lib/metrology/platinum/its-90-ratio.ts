import { exponential } from "../number/exponential";
import { logarithm } from "../number/logarithm";
import { polynomial, polynomialSlope } from "../number/polynomial";
import type { ValueAndSlope } from "../number/solve-increasing";
import { found, type Outcome, refused } from "../outcome";

/**
 * H. Preston-Thomas, The International Temperature Scale of 1990, Metrologia 27 (1990) 3: equations (9a) and
 * (10a).
 */
const A = [
  -2.13534729, 3.1832472, -1.80143597, 0.71727204, 0.50344027, -0.61899395, -0.05332322, 0.28021362,
  0.10715224, -0.29302865, 0.04459872, 0.11868632, -0.05248134,
];
const C = [
  2.78157254, 1.64650916, -0.1371439, -0.00649767, -0.00234444, 0.00511868, 0.00187982, -0.00204472,
  -0.00046122, 0.00045724,
];
export const TRIPLE_POINT_KELVIN = 273.16;
/** 0 °C: below it equation (9a), from it on (10a); in the 10 mK that both cover they agree to 1e-8. */
export const ZERO_CELSIUS_KELVIN = 273.15;
/** Triple point of equilibrium hydrogen, freezing point of silver: the range of the reference functions. */
export const RATIO_FROM_KELVIN = 13.8033;
export const RATIO_TO_KELVIN = 1234.93;

/**
 * W_r(T) and dW_r/dT in K⁻¹, T in kelvin: ITS-90, equation (9a) below 273.15 K, ln W_r = A₀ + Σ
 * Aᵢ·[(ln(T/273.16) + 1.5)/1.5]ⁱ, and (10a) above, W_r = C₀ + Σ Cᵢ·[(T − 754.15)/481]ⁱ. No range is checked;
 * NaN stays NaN.
 */
export function ratioAndSlope(kelvin: number): ValueAndSlope {
  if (kelvin < ZERO_CELSIUS_KELVIN) {
    const x = (logarithm(kelvin / TRIPLE_POINT_KELVIN) + 1.5) / 1.5;
    const value = exponential(polynomial(A, x));
    return { value, slope: (value * polynomialSlope(A, x)) / (1.5 * kelvin) };
  }
  const x = (kelvin - 754.15) / 481;
  return { value: polynomial(C, x), slope: polynomialSlope(C, x) / 481 };
}

/**
 * W_r(T), the reference function of the standard platinum resistance thermometer, R(T)/R(273.16 K) of an
 * ideal one: ITS-90,
 * equations (9a) and (10a), T in kelvin from 13.8033 K to 1234.93 K. Agrees with the published W_r at the
 * fixed points to 1e-8.
 * Problems: `not-finite`; `outside-range`.
 */
export function its90Ratio(kelvin: number): Outcome<number> {
  if (!Number.isFinite(kelvin)) return refused("not-finite", `temperature ${kelvin} is not a number`);
  if (kelvin < RATIO_FROM_KELVIN || kelvin > RATIO_TO_KELVIN) {
    return refused("outside-range", `${kelvin} K: W_r of the ITS-90 goes from 13.8033 K to 1234.93 K`);
  }
  return found(ratioAndSlope(kelvin).value);
}
