import type { ReferenceFunction } from "@/lib/metrology/thermocouple/reference-function";
import type { AddedEmf } from "@/lib/metrology/thermocouple/temperature";
import { temperatureSeries } from "@/lib/metrology/thermocouple/temperature-series";

/** The last step; what is still off after it is a thousandth of that, below anything a window can show. */
const TOLERANCE_CELSIUS = 1e-6;
const MOST_ROUNDS = 8;

/**
 * Temperatures of a whole series with the deviation of a certificate: t ← T(E − ΔE(t)) until it stands still. ΔE changes
 * by thousandths of what E does, so each round brings three digits or more. Null where a reading has no temperature
 * or the rounds do not settle: then each is solved by itself.
 */
export function certifiedTemperatures(
  reference: ReferenceFunction,
  microvolts: Float64Array,
  added: AddedEmf,
): Float64Array | null {
  const first = temperatureSeries(reference, microvolts);
  if (!first.ok) return null;
  const celsius = first.value;
  const reduced = new Float64Array(microvolts.length);
  const next = new Float64Array(microvolts.length);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    for (let i = 0; i < reduced.length; i += 1) {
      reduced[i] = (microvolts[i] as number) - added(celsius[i] as number).value;
    }
    const better = temperatureSeries(reference, reduced, next);
    if (!better.ok) return null;
    let moved = 0;
    for (let i = 0; i < next.length; i += 1) {
      moved = Math.max(moved, Math.abs((next[i] as number) - (celsius[i] as number)));
    }
    celsius.set(next);
    if (moved <= TOLERANCE_CELSIUS) return celsius;
  }
  return null;
}
