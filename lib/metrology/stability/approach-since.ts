import { DWELL_CELSIUS } from "./find-dwell";
import type { ReferenceSeries } from "./stability-types";

/**
 * Since when all references have stood within 5 °C of the nominal without a break up to their last readings, in seconds; null
 * if one of them does not stand there now, or has no readings.
 *
 * Source: laboratory practice, the same 5 °C as a dwell's (`findDwell`). Seconds ascending, °C; a reading that is no number
 * counts as away. No error cases.
 */
export function approachSince(references: readonly ReferenceSeries[], nominalCelsius: number): number | null {
  let since: number | null = null;
  for (const { seconds, celsius } of references) {
    let first = seconds.length;
    while (first > 0 && Math.abs((celsius[first - 1] as number) - nominalCelsius) <= DWELL_CELSIUS)
      first -= 1;
    if (first === seconds.length) return null;
    since = Math.max(since ?? Number.NEGATIVE_INFINITY, seconds[first] as number);
  }
  return since;
}
