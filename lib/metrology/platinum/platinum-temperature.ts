import { solveIncreasing } from "../number/solve-increasing";
import { found, type Outcome, refused } from "../outcome";
import { type CallendarVanDusen, PLATINUM_FROM_CELSIUS, PLATINUM_TO_CELSIUS } from "./callendar-van-dusen";
import { resistanceAndSlope } from "./platinum-resistance";

const TOLERANCE_CELSIUS = 1e-11;

/**
 * t in °C (ITS-90) from R in Ω, −200 °C to 850 °C: the exact inverse of IEC 60751:2008 and 2022 on both sides
 * of 0 °C. The root of the square (IEC 60751, for t ≥ 0 °C) is the start value; below 0 °C it misses by up to
 * 2.4 °C, and Newton's method on the direct function takes over. |t(R(t)) − t| ≤ 1e-9 °C.
 * Problems: `not-finite`; `outside-range` for an R that no temperature of the range has; `no-solution` when
 * the coefficients are not numbers or give no rising function.
 */
export function platinumTemperature(sensor: CallendarVanDusen, ohm: number): Outcome<number> {
  if (!Number.isFinite(ohm)) return refused("not-finite", `resistance ${ohm} is not a number`);
  const low = resistanceAndSlope(sensor, PLATINUM_FROM_CELSIUS);
  const high = resistanceAndSlope(sensor, PLATINUM_TO_CELSIUS);
  if (!(low.slope > 0 && high.slope > 0 && low.value < high.value)) {
    return refused("no-solution", "the coefficients of the thermometer give no rising resistance");
  }
  if (ohm < low.value || ohm > high.value) {
    return refused(
      "outside-range",
      `${ohm} Ω is not between ${low.value} Ω at -200 °C and ${high.value} Ω at 850 °C (IEC 60751)`,
    );
  }
  const { zeroOhm, a, b } = sensor;
  const rise = ohm / zeroOhm - 1;
  // The form without a difference of two near numbers at 0 °C.
  const start = (2 * rise) / (a + Math.sqrt(a * a + 4 * b * rise));
  return found(
    solveIncreasing(
      (celsius) => resistanceAndSlope(sensor, celsius),
      ohm,
      { low: PLATINUM_FROM_CELSIUS, high: PLATINUM_TO_CELSIUS },
      start,
      TOLERANCE_CELSIUS,
    ),
  );
}
