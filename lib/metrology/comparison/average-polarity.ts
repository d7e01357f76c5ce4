import { mean } from "../number/mean";
import { sum } from "../number/sum";
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
 * V = (mean(+) − mean(−))/2 where leads were reversed, so that a parasitic emf that does not reverse
 * drops out; the plain mean where they were not. The slope is taken within each polarity and pooled: a
 * parasitic emf then cannot pass for a drift, even when all forward readings come first.
 */
export function averagePolarity(readings: PolarReadings): Outcome<ChannelMean> {
  const forward = pick(readings, 1);
  const reversed = pick(readings, -1);
  const groups = [forward, reversed].filter((group) => group.seconds.length > 0);
  if (groups.length === 0) return refused("too-few", "no reading in the window");
  const products: number[] = [];
  const squares: number[] = [];
  for (const group of groups) {
    const centreX = mean(group.seconds);
    const centreY = mean(group.microvolts);
    for (let i = 0; i < group.seconds.length; i += 1) {
      const dx = (group.seconds[i] ?? Number.NaN) - centreX;
      products.push(dx * ((group.microvolts[i] ?? Number.NaN) - centreY));
      squares.push(dx * dx);
    }
  }
  const spread = sum(squares);
  const microvolt = mean(groups.map((group) => mean(group.microvolts)));
  if (!Number.isFinite(microvolt)) return refused("not-finite", "a reading in the window is not a number");
  return found({
    microvolt,
    seconds: mean(groups.map((group) => mean(group.seconds))),
    slopeMicrovoltPerSecond: spread > 0 ? sum(products) / spread : 0,
    forward: forward.seconds.length,
    reversed: reversed.seconds.length,
  });
}

/** Readings of one polarity, their sign turned so that they mean the same emf. */
function pick(readings: PolarReadings, polarity: 1 | -1): { seconds: number[]; microvolts: number[] } {
  const seconds: number[] = [];
  const microvolts: number[] = [];
  for (let i = 0; i < readings.seconds.length; i += 1) {
    if (readings.polarity[i] !== polarity) continue;
    seconds.push(readings.seconds[i] ?? Number.NaN);
    microvolts.push(polarity * (readings.microvolts[i] ?? Number.NaN));
  }
  return { seconds, microvolts };
}
