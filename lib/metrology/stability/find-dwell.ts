import { mean } from "../number/mean";
import { firstAtOrAfter } from "./bounds";
import type { ReferenceSeries } from "./stability-types";
import { departing } from "./trim-departure";

/** Within this of the nominal the furnace counts as standing at the setpoint. */
export const DWELL_CELSIUS = 5;

/** How much of the end of a dwell tells what rest looks like. */
const REST_SECONDS = 600;

export type Dwell = { readonly fromSeconds: number; readonly toSeconds: number };

/**
 * The longest unbroken stretch in which the references' mean lies within 5 °C of the nominal, or null.
 * Within 5 °C is this project's rule, no source. Judged at the times of the first reference; the others are read off between their readings.
 */
export function findDwell(references: readonly ReferenceSeries[], nominalCelsius: number): Dwell | null {
  const lead = references[0];
  if (!lead) return null;
  const celsius = Array.from(lead.seconds, (t) => mean(references.map((r) => valueAt(r, t))));
  const time = (i: number): number => lead.seconds[i] as number;
  let best: { readonly first: number; readonly last: number } | null = null;
  let first: number | null = null;
  for (let i = 0; i < celsius.length; i += 1) {
    if (!(Math.abs((celsius[i] as number) - nominalCelsius) <= DWELL_CELSIUS)) {
      first = null;
      continue;
    }
    first ??= i;
    if (best === null || time(i) - time(first) > time(best.last) - time(best.first))
      best = { first, last: i };
  }
  if (!best) return null;
  const wasLeft = best.last < celsius.length - 1;
  const last = wasLeft ? atRest(celsius, lead.seconds, best.first, best.last) : best.last;
  return extendToScan(references, lead, { fromSeconds: time(best.first), toSeconds: time(last) });
}

/** The last reading before the ramp that ends the dwell; what rest looks like is told by the last ten minutes. */
function atRest(celsius: readonly number[], seconds: ArrayLike<number>, first: number, last: number): number {
  const recent = last - firstAtOrAfter(seconds, (seconds[last] as number) - REST_SECONDS) + 1;
  return Math.max(first, last - departing(celsius.slice(first, last + 1), recent));
}

/** Linear between readings, the nearest reading beyond the ends. */
function valueAt(reference: ReferenceSeries, t: number): number {
  const { seconds, celsius } = reference;
  const last = seconds.length - 1;
  const i = firstAtOrAfter(seconds, t);
  if (i <= 0) return celsius.length > 0 ? (celsius[0] as number) : Number.NaN;
  if (i > last) return celsius[last] as number;
  const a = seconds[i - 1] as number;
  const b = seconds[i] as number;
  const low = celsius[i - 1] as number;
  return low + (((celsius[i] as number) - low) * (t - a)) / (b - a);
}

/**
 * References may stand first and last in a scan: the scan that opens with the lead reference's last
 * reading belongs to the dwell as a whole, up to just before the lead reads again.
 */
function extendToScan(references: readonly ReferenceSeries[], lead: ReferenceSeries, dwell: Dwell): Dwell {
  const next = lead.seconds[firstAtOrAfter(lead.seconds, dwell.toSeconds) + 1] ?? Number.POSITIVE_INFINITY;
  let toSeconds = dwell.toSeconds;
  for (const { seconds } of references.slice(1)) {
    const i = firstAtOrAfter(seconds, next) - 1;
    const t = seconds[i];
    if (t !== undefined && t > toSeconds) toSeconds = t;
  }
  return { fromSeconds: dwell.fromSeconds, toSeconds };
}
