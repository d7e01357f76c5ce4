import { select } from "../../number/select";
import { found, type Outcome, refused } from "../../outcome";
import { CHUNK } from "./sampler";

export type Interval = { readonly low: number; readonly high: number };

/** What trials of a result say of it, all in the result's unit. */
export type Summary = {
  readonly estimate: number;
  readonly standardUncertainty: number;
  /** As much probability below as above. */
  readonly symmetric: Interval;
  /** The shortest of all intervals that hold the probability. */
  readonly shortest: Interval;
};

/**
 * Mean, standard deviation and both coverage intervals of trials (JCGM 101:2008, 7.6 eq. 16 and 17, 7.7.1 to 7.7.4), exact
 * for the trials given. Rearranges `values`: only the two tails are sorted.
 *
 * `values` in the result's unit; `probability` from above 0.5 to below 1. Refuses: another probability
 * ("outside-range"), fewer trials than 1/(1 − p) or than two ("too-few"), and a trial that is not finite ("not-finite").
 */
export function summarize(values: Float64Array, probability: number): Outcome<Summary> {
  if (!(probability > 0.5 && probability < 1)) {
    return refused("outside-range", `Coverage probability ${probability}: it lies between 0.5 and 1.`);
  }
  const trials = values.length;
  // 7.7.2: pM, or the next whole number to it; the +½ also takes care of pM that is whole but for rounding.
  const covered = Math.floor(probability * trials + 0.5);
  const spare = trials - covered;
  if (spare < 1 || trials < 2) {
    return refused("too-few", `${trials} trials do not reach beyond ${probability} of themselves.`);
  }
  const estimate = total(values, 0, 1) / trials;
  if (!Number.isFinite(estimate))
    return refused("not-finite", "A trial of the model is not a finite number.");
  const standardUncertainty = Math.sqrt(total(values, estimate, 2) / (trials - 1));
  // Candidates for ends: the `spare` lowest below, the `spare` highest above; covered ≥ spare, as p > ½.
  select(values, spare - 1);
  select(values, covered, spare);
  values.subarray(0, spare).sort();
  values.subarray(covered).sort();
  const between = (place: number): Interval => ({
    low: values[place] as number,
    high: values[place + covered] as number,
  });
  let shortest = between(0);
  for (let place = 1; place < spare; place += 1) {
    const width = (values[place + covered] as number) - (values[place] as number);
    if (width < shortest.high - shortest.low) shortest = between(place);
  }
  // 7.7.3: r = (M − q)/2, or with ½ more where that is not whole, counted from 1.
  const symmetric = between(Math.floor((spare + 1) / 2) - 1);
  return found({ estimate, standardUncertainty, symmetric, shortest });
}

/** Σ(x − shift), or of its squares: sums of chunks, so that a million roundings do not pile up in one number. */
function total(values: Float64Array, shift: number, power: 1 | 2): number {
  let sum = 0;
  for (let start = 0; start < values.length; start += CHUNK) {
    const end = Math.min(values.length, start + CHUNK);
    let part = 0;
    for (let i = start; i < end; i += 1) {
      const difference = (values[i] as number) - shift;
      part += power === 1 ? difference : difference * difference;
    }
    sum += part;
  }
  return sum;
}
