import { found, type Outcome, refused } from "../outcome";
import { interpolate } from "./interpolate";

export type TimedValues = { readonly seconds: readonly number[]; readonly values: readonly number[] };

/**
 * A series brought to the times of another by straight lines between its own readings: in a continuous scan each reading
 * has its own time, 40 channels take 10 to 20 s, and a reference must be compared at the sensor's moment (EA-4/02 S5
 * with each reading's own time). Seconds; values in any unit. Nothing is extrapolated: moments before the first or after
 * the last reading are not given, so read references first and last in the scan.
 * Problems: `too-few` readings or moments within; `not-finite`; `not-applicable` for lengths that differ or times that
 * do not rise.
 */
export function atCommonTimes(series: TimedValues, moments: readonly number[]): Outcome<TimedValues> {
  const refusal = checkTimedValues(series);
  if (refusal) return refusal;
  if (!moments.every(Number.isFinite)) return refused("not-finite", "a moment is not a number");
  const nodes = series.seconds.map((x, i) => ({ x, y: series.values[i] as number }));
  const first = series.seconds[0] as number;
  const last = series.seconds.at(-1) as number;
  const seconds = moments.filter((moment) => moment >= first && moment <= last);
  if (seconds.length === 0) return refused("too-few", `no moment lies between ${first} s and ${last} s`);
  return found({ seconds, values: seconds.map((moment) => interpolate(nodes, moment).value) });
}

/** Whether a series can be read at other times (source, units: `atCommonTimes`, whose problems these are); null if so. */
export function checkTimedValues({ seconds, values }: TimedValues): ReturnType<typeof refused> | null {
  if (seconds.length !== values.length) return refused("not-applicable", "each value needs its time");
  if (seconds.length === 0) return refused("too-few", "the series holds no reading");
  let before = Number.NEGATIVE_INFINITY;
  for (const [i, moment] of seconds.entries()) {
    if (!Number.isFinite(moment) || !Number.isFinite(values[i])) {
      return refused("not-finite", `reading ${i + 1} of the series is not a number`);
    }
    if (!(moment > before)) return refused("not-applicable", `the times do not rise at ${moment} s`);
    before = moment;
  }
  return null;
}
