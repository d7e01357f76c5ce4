import { polynomial } from "../number/polynomial";
import { power } from "../number/power";
import { solveIncreasing } from "../number/solve-increasing";
import { found, type Outcome, refused } from "../outcome";
import {
  RATIO_FROM_KELVIN,
  RATIO_TO_KELVIN,
  ratioAndSlope,
  TRIPLE_POINT_KELVIN,
  ZERO_CELSIUS_KELVIN,
} from "./its-90-ratio";

/**
 * H. Preston-Thomas, Metrologia 27 (1990) 3: the inverse functions, equations (9b) and (10b), good to 0.1 mK
 * and 0.13 mK.
 */
const B = [
  0.183324722, 0.240975303, 0.209108771, 0.190439972, 0.142648498, 0.077993465, 0.012475611, -0.032267127,
  -0.075291522, -0.05647067, 0.076201285, 0.123893204, -0.029201193, -0.091173542, 0.001317696, 0.026025526,
];
const D = [
  439.932854, 472.41802, 37.684494, 7.472018, 2.920828, 0.005184, -0.963864, -0.188732, 0.191203, 0.049025,
];
/** A ratio beyond an end by no more than the rounding of the published table of W_r belongs to the end. */
const END_RATIO = 1e-8;
const TOLERANCE_KELVIN = 1e-11;

function startValue(ratio: number): number {
  return ratio < 1
    ? TRIPLE_POINT_KELVIN * polynomial(B, (power(ratio, 1 / 6) - 0.65) / 0.35)
    : ZERO_CELSIUS_KELVIN + polynomial(D, (ratio - 2.64) / 1.64);
}

/**
 * T in kelvin with W_r(T) = ratio: ITS-90, the exact inverse of equations (9a) and (10a). The published
 * inverses (9b) and (10b) are off by up to 0.13 mK and serve as start values for Newton's method on the
 * direct functions. |T(W_r(T)) − T| ≤ 1e-9 K, where the two functions meet at 273.15 K within 2e-6 K.
 * Problems: `not-finite`; `outside-range` for a ratio that no temperature from 13.8033 K to 1234.93 K has.
 */
export function its90Kelvin(ratio: number): Outcome<number> {
  if (!Number.isFinite(ratio)) return refused("not-finite", `resistance ratio ${ratio} is not a number`);
  const low = ratioAndSlope(RATIO_FROM_KELVIN).value;
  const high = ratioAndSlope(RATIO_TO_KELVIN).value;
  if (ratio < low - END_RATIO || ratio > high + END_RATIO) {
    return refused("outside-range", `W_r = ${ratio}: the ITS-90 goes from ${low} to ${high}`);
  }
  const range = { low: RATIO_FROM_KELVIN, high: RATIO_TO_KELVIN };
  const target = Math.min(Math.max(ratio, low), high);
  return found(solveIncreasing(ratioAndSlope, target, range, startValue(target), TOLERANCE_KELVIN));
}
