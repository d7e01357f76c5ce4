import { type Outcome, refused } from "../outcome";
import { describeRange, type ReferenceFunction } from "./reference-function";

/**
 * The problem of a temperature (°C) at which a reference function has no value: `not-finite`, else
 * `outside-range` of its source. `place` goes before the message, e.g. which of many values it was.
 */
export function refuseTemperature(
  reference: ReferenceFunction,
  celsius: number,
  place = "",
): Extract<Outcome<never>, { ok: false }> {
  return Number.isFinite(celsius)
    ? refused("outside-range", `${place}${celsius} °C: ${describeRange(reference)}`)
    : refused("not-finite", `${place}temperature ${celsius} is not a number`);
}
