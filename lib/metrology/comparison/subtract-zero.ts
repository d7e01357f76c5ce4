import { mean } from "../number/mean";
import { found, type Outcome } from "../outcome";
import { checkTimedValues, type TimedValues } from "./at-common-times";
import { interpolate } from "./interpolate";
import { typeAFromBlocks } from "./type-a-from-blocks";

export type ZeroedReadings = {
  readonly seconds: readonly number[];
  /** Indication less the zero of its moment, µV. */
  readonly values: readonly number[];
  /** Mean of what was taken off, µV. */
  readonly zeroMicrovolt: number;
  /** Type A of the zero, µV: the same error in all that it is taken off, so it belongs to the shared lines. */
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
};

/**
 * Takes the indication of a shorted channel off as zero, where leads are not reversed (common practice, no
 * source): `mean` over the window, or `interpolated` to each reading's own time, which follows a zero that
 * wanders and lets its noise in. Seconds and µV; type A from means over blocks of `blockSeconds` (`typeAFromBlocks`).
 * Beyond the first and last zero the nearest is held. Problems: those of `typeAFromBlocks` and `atCommonTimes`.
 */
export function subtractZero(
  readings: TimedValues,
  shorted: TimedValues,
  rule: "mean" | "interpolated",
  blockSeconds: number,
): Outcome<ZeroedReadings> {
  const refusal = checkTimedValues(readings) ?? checkTimedValues(shorted);
  if (refusal) return refusal;
  const typeA = typeAFromBlocks(shorted, blockSeconds);
  if (!typeA.ok) return typeA;
  const nodes = shorted.seconds.map((x, i) => ({ x, y: shorted.values[i] as number }));
  const average = mean(shorted.values);
  const zeros = readings.seconds.map((at) => (rule === "mean" ? average : interpolate(nodes, at).value));
  return found({
    seconds: readings.seconds,
    values: readings.values.map((value, i) => value - (zeros[i] as number)),
    zeroMicrovolt: mean(zeros),
    standardUncertainty: typeA.value.standardUncertainty,
    degreesOfFreedom: typeA.value.degreesOfFreedom,
  });
}
