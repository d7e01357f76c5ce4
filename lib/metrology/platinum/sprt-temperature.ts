import { found, type Outcome, refused } from "../outcome";
import { its90Kelvin } from "./its-90-kelvin";
import { ZERO_CELSIUS_KELVIN } from "./its-90-ratio";
import type { SprtCalibration } from "./sprt-calibration";
import { sprtDeviation } from "./sprt-deviation";
import { SUBRANGE_END_KELVIN } from "./sprt-subrange";

/**
 * t in °C (ITS-90) from W = R(t)/R(273.16 K) of a calibrated standard platinum resistance thermometer: W_r =
 * W − ΔW(W), then the exact inverse of the reference function. ITS-90 (Metrologia 27 (1990) 3), section 3.3.
 * Both resistances are at the same current, or at zero current, and R at the triple point is of the same day.
 * Problems: `not-finite`; `outside-range` outside the subrange of the calibration.
 */
export function sprtTemperature(calibration: SprtCalibration, ratio: number): Outcome<number> {
  const kelvin = its90Kelvin(ratio - sprtDeviation(calibration, ratio).value);
  if (!kelvin.ok) return kelvin;
  const { fromKelvin, toKelvin, section } = calibration.subrange;
  if (kelvin.value < fromKelvin - SUBRANGE_END_KELVIN || kelvin.value > toKelvin + SUBRANGE_END_KELVIN) {
    return refused(
      "outside-range",
      `W = ${ratio} is ${kelvin.value} K: subrange ${section} goes from ${fromKelvin} K to ${toKelvin} K`,
    );
  }
  return found(kelvin.value - ZERO_CELSIUS_KELVIN);
}
