import { mean } from "../number/mean";
import { sumBetween } from "../number/sum";
import { found, type Outcome, refused } from "../outcome";

/** Corrected indications of one channel within a window; polarity −1 = leads reversed. */
export type PolarReadings = {
  readonly seconds: ArrayLike<number>;
  readonly microvolts: ArrayLike<number>;
  readonly polarity: ArrayLike<number>;
};

export type ChannelMean = {
  readonly microvolt: number;
  /** The moment the mean belongs to. */
  readonly seconds: number;
  /** Drift of the signed emf within the window, µV/s; 0 when one moment alone was read. */
  readonly slopeMicrovoltPerSecond: number;
  readonly forward: number;
  readonly reversed: number;
};

/**
 * V = (mean(+) − mean(−))/2 where leads were reversed, so that a parasitic emf that does not reverse drops out (EA-4/02 S5,
 * S5.15); the plain mean where they were not. The slope is taken within each polarity and pooled: a parasitic emf then
 * cannot pass for a drift, even when all forward readings come first. Seconds and µV, three arrays of one
 * length, of which the readings from `from` to before `to` count.
 * Problems: `too-few` when no reading has a polarity of 1 or −1; `not-finite` for a reading that is no number.
 */
export function averagePolarity(
  readings: PolarReadings,
  from = 0,
  to = readings.seconds.length,
): Outcome<ChannelMean> {
  const forward = meanOf(readings, 1, from, to);
  const reversed = meanOf(readings, -1, from, to);
  const groups = [forward, reversed].filter((group) => group.count > 0);
  if (groups.length === 0) return refused("too-few", "no reading in the window");
  const microvolt = mean(groups.map((group) => group.microvolt));
  if (!Number.isFinite(microvolt)) return refused("not-finite", "a reading in the window is not a number");
  let products = 0;
  let squares = 0;
  for (let i = from; i < to; i += 1) {
    const polarity = readings.polarity[i] as number;
    if (polarity !== 1 && polarity !== -1) continue;
    const group = polarity === 1 ? forward : reversed;
    const dx = (readings.seconds[i] as number) - group.seconds;
    products += dx * (polarity * (readings.microvolts[i] as number) - group.microvolt);
    squares += dx * dx;
  }
  return found({
    microvolt,
    seconds: mean(groups.map((group) => group.seconds)),
    slopeMicrovoltPerSecond: squares > 0 ? products / squares : 0,
    forward: forward.count,
    reversed: reversed.count,
  });
}

type GroupMean = { readonly count: number; readonly seconds: number; readonly microvolt: number };

/** Means of the readings of one polarity, their sign turned so that they mean the same emf; NaN for none. */
function meanOf(readings: PolarReadings, polarity: 1 | -1, from: number, to: number): GroupMean {
  let count = 0;
  for (let i = from; i < to; i += 1) if (readings.polarity[i] === polarity) count += 1;
  // Where all readings are forward, as in a continuous scan, they are averaged where they stand.
  if (polarity === 1 && count === to - from) {
    const seconds = sumBetween(readings.seconds, from, to) / count;
    return { count, seconds, microvolt: sumBetween(readings.microvolts, from, to) / count };
  }
  const seconds = new Float64Array(count);
  const microvolts = new Float64Array(count);
  let place = 0;
  for (let i = from; i < to; i += 1) {
    if (readings.polarity[i] !== polarity) continue;
    seconds[place] = readings.seconds[i] as number;
    microvolts[place] = polarity * (readings.microvolts[i] as number);
    place += 1;
  }
  return { count, seconds: mean(seconds), microvolt: mean(microvolts) };
}
