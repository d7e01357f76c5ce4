import { solveIncreasing } from "../number/solve-increasing";
import { found, type Outcome, refused } from "../outcome";
import { ratioAndSlope, ZERO_CELSIUS_KELVIN } from "./its-90-ratio";
import type { SprtCalibration } from "./sprt-calibration";
import { sprtDeviation } from "./sprt-deviation";
import { SUBRANGE_END_KELVIN } from "./sprt-subrange";

/** How far from its W_r the W of any usable thermometer can be. */
const LARGEST_DEVIATION = 0.05;
const TOLERANCE = 1e-15;

/**
 * W = R(t)/R(273.16 K) of a calibrated standard platinum resistance thermometer at t in °C: solves W − ΔW(W)
 * = W_r(T), the inverse of `sprtTemperature`. ITS-90 (Metrologia 27 (1990) 3), section 3.3.
 * Problems: `not-finite`; `outside-range` outside the subrange; `no-solution` when ΔW is larger than 0.05, as
 * no standard thermometer's is.
 */
export function sprtRatio(calibration: SprtCalibration, celsius: number): Outcome<number> {
  if (!Number.isFinite(celsius)) return refused("not-finite", `temperature ${celsius} is not a number`);
  const kelvin = celsius + ZERO_CELSIUS_KELVIN;
  const { fromKelvin, toKelvin, section } = calibration.subrange;
  if (kelvin < fromKelvin - SUBRANGE_END_KELVIN || kelvin > toKelvin + SUBRANGE_END_KELVIN) {
    return refused(
      "outside-range",
      `${kelvin} K: subrange ${section} goes from ${fromKelvin} K to ${toKelvin} K`,
    );
  }
  const reduced = (ratio: number) => {
    const deviation = sprtDeviation(calibration, ratio);
    return { value: ratio - deviation.value, slope: 1 - deviation.slope };
  };
  const target = ratioAndSlope(kelvin).value;
  const range = { low: target - LARGEST_DEVIATION, high: target + LARGEST_DEVIATION };
  if (!(reduced(range.low).value <= target && reduced(range.high).value >= target)) {
    return refused("no-solution", `no W within ${LARGEST_DEVIATION} of W_r = ${target}`);
  }
  return found(solveIncreasing(reduced, target, range, target, TOLERANCE));
}
