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
  if (corrections.length === 0) return (microvolt) => microvolt;
  const nodes = corrections.map(({ microvolt: x, correctionMicrovolt: y }) => ({ x, y }));
  // Readings of a window lie close together: most stand between the same two nodes as the one before.
  let from = Number.NaN;
  let to = Number.NaN;
  let at = 0;
  let slope = 0;
  return (microvolt) => {
    if (microvolt >= from && microvolt < to) return microvolt + (at + slope * (microvolt - from));
    const place = nodes.findIndex(({ x }) => x > microvolt);
    const below = place > 0 ? nodes[place - 1] : undefined;
    const here = interpolate(nodes, microvolt);
    if (below) {
      from = below.x;
      to = nodes[place]?.x ?? below.x;
      at = below.y;
      slope = here.slope;
    }
    return microvolt + here.value;
  };
}

/**
 * One channel's mean emf within a window from its corrected readings, polarity reversal taken out. `zeroMicrovolt`, the mean of a
 * shorted channel, is taken off where no lead was reversed: a reversal has taken it out already.
 */
export function channelInWindow<Item>(
  mounted: Mounted<Item>,
  window: Window,
  microvolts: ArrayLike<number>,
  zeroMicrovolt = 0,
): EvidenceOutcome<ChannelInWindow> {
  const { readings, readingsPath, place, junction, reference } = mounted;
  if (!readings) {
    return missing(readingsPath, `Channel ${place.channel} is in the load but has no readings.`);
  }
  const from = firstAtOrAfter(readings.seconds, window.fromSeconds);
  const to = firstAfter(readings.seconds, window.toSeconds);
  const where = `between ${window.fromSeconds} s and ${window.toSeconds} s`;
  if (to <= from) {
    return missing(readingsPath, `Channel ${place.channel} has no reading ${where}: move the window.`);
  }
  const { seconds, polarity } = readings;
  const average = averagePolarity({ seconds, microvolts, polarity }, from, to);
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

/** All indications of a channel with the voltmeter's correction, once for all windows. */
export function correctedReadings(
  readings: Readings | undefined,
  corrections: Corrections,
): ArrayLike<number> {
  const raw = readings?.microvolts ?? [];
  if (corrections.length === 0) return raw;
  const correct = indicationCorrector(corrections);
  const corrected = new Float64Array(raw.length);
  for (let i = 0; i < raw.length; i += 1) corrected[i] = correct(raw[i] as number);
  return corrected;
}
