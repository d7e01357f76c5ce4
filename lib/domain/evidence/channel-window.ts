import { averagePolarity, type ChannelMean } from "@/lib/metrology/comparison/average-polarity";
import { interpolate } from "@/lib/metrology/comparison/interpolate";
import { firstAfter, firstAtOrAfter } from "@/lib/metrology/stability/bounds";
import { emf } from "@/lib/metrology/thermocouple/emf";
import type { Mounted, Readings } from "./bench";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import type { Evidence } from "./schema";

export type Window = { readonly fromSeconds: number; readonly toSeconds: number };

export type ChannelInWindow = ChannelMean & {
  readonly readings: number;
  /** What was taken off as zero, µV. */
  readonly zeroMicrovolt: number;
  /** Emf of the junction's own temperature, by the reference function, µV: added to reach 0 °C. */
  readonly junctionMicrovolt: number;
};

type Corrections = Evidence["voltmeter"]["corrections"];

/** Adds the voltmeter's correction at the indication, sign included, to the indication. */
export function indicationCorrector(corrections: Corrections): (microvolt: number) => number {
  const nodes = corrections.map(({ microvolt: x, correctionMicrovolt: y }) => ({ x, y }));
  return nodes.length === 0 ? (v) => v : (v) => v + interpolate(nodes, v).value;
}

/**
 * One channel's mean emf within a window from its corrected readings, polarity reversal taken out. `zeroMicrovolt`, the mean of a
 * shorted channel, is taken off where no lead was reversed: a reversal has taken it out already.
 */
export function channelInWindow<Item>(
  mounted: Mounted<Item>,
  window: Window,
  corrected: CorrectedReadings,
  zeroMicrovolt = 0,
): EvidenceOutcome<ChannelInWindow> {
  const { readings, readingsPath, place, junction, reference } = mounted;
  if (!readings) {
    return missing(readingsPath, `Channel ${place.channel} is in the load but has no readings.`);
  }
  const from = firstAtOrAfter(corrected.seconds, window.fromSeconds);
  const to = firstAfter(corrected.seconds, window.toSeconds);
  const where = `between ${window.fromSeconds} s and ${window.toSeconds} s`;
  if (to <= from) {
    return missing(readingsPath, `Channel ${place.channel} has no reading ${where}: move the window.`);
  }
  const average = averagePolarity(corrected, from, to);
  if (!average.ok) return missing(readingsPath, average.problem.message);
  if (!isBalanced(average.value)) {
    return missing(
      `${readingsPath}.polarity`,
      `Channel ${place.channel} has ${average.value.forward} forward and ${average.value.reversed} reversed readings ${where}: a parasitic emf drops out only when both are about as many.`,
    );
  }
  const atJunction = emf(reference, junction.celsius);
  if (!atJunction.ok) return missing(`${mounted.placePath}.junction`, atJunction.problem.message);
  const zero = average.value.reversed === 0 ? zeroMicrovolt : 0;
  return got({
    ...average.value,
    microvolt: average.value.microvolt - zero,
    zeroMicrovolt: zero,
    readings: to - from,
    junctionMicrovolt: atJunction.value,
  });
}

/** Reversed leads need forward ones: fewer than half as many of one than of the other is no reversal. */
function isBalanced({ forward, reversed }: ChannelMean): boolean {
  return reversed === 0 || Math.min(forward, reversed) * 2 > Math.max(forward, reversed);
}

/** A channel's times and corrected indications as typed arrays: made once, read in every window. */
export type CorrectedReadings = {
  readonly seconds: Float64Array;
  readonly microvolts: Float64Array;
  readonly polarity: readonly number[];
};

export function correctedReadings(
  readings: Readings | undefined,
  corrections: Corrections,
): CorrectedReadings {
  const microvolts = new Float64Array(readings?.microvolts ?? []);
  if (corrections.length > 0) correctInPlace(microvolts, corrections);
  return {
    seconds: new Float64Array(readings?.seconds ?? []),
    microvolts,
    polarity: readings?.polarity ?? [],
  };
}

/** `indicationCorrector` for a whole series: most readings stand between the same two nodes as the one before. */
function correctInPlace(microvolts: Float64Array, corrections: Corrections): void {
  const nodes = corrections.map(({ microvolt: x, correctionMicrovolt: y }) => ({ x, y }));
  let from = Number.NaN;
  let to = Number.NaN;
  let at = 0;
  let slope = 0;
  for (let i = 0; i < microvolts.length; i += 1) {
    const indicated = microvolts[i] as number;
    if (!(indicated >= from && indicated < to)) {
      const above = nodes.findIndex(({ x }) => x > indicated);
      const below = nodes[above - 1];
      const here = interpolate(nodes, indicated);
      // Beyond the ends the correction is constant: a segment of this reading alone.
      from = below?.x ?? indicated;
      to = below ? (nodes[above] as { readonly x: number }).x : indicated;
      at = below?.y ?? here.value;
      slope = here.slope;
    }
    microvolts[i] = indicated + (at + slope * (indicated - from));
  }
}
