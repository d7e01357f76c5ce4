import { performance } from "node:perf_hooks";

/** What one thing costs, as a ratio against a baseline measured in the same run: absolute times of a machine mean little. */
export type Figure = {
  readonly name: string;
  readonly ours: string;
  readonly baseline: string;
  readonly oursMilliseconds: number;
  readonly baselineMilliseconds: number;
};

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const upper = sorted[middle] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] ?? upper)) / 2;
};

const once = async (work: () => Promise<void> | void): Promise<number> => {
  const begun = performance.now();
  await work();
  return performance.now() - begun;
};

/** Both sides in turn, so that whatever else the machine does falls on both; the first round warms up and does not count. */
export const compare = async (
  names: Pick<Figure, "name" | "ours" | "baseline">,
  ours: () => Promise<void> | void,
  baseline: () => Promise<void> | void,
  rounds = 7,
): Promise<Figure> => {
  const own: number[] = [];
  const base: number[] = [];
  for (let round = 0; round <= rounds; round++) {
    const spent = [await once(ours), await once(baseline)] as const;
    if (round === 0) continue;
    own.push(spent[0]);
    base.push(spent[1]);
  }
  return { ...names, oursMilliseconds: median(own), baselineMilliseconds: median(base) };
};
