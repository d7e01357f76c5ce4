import type { RandomStream } from "../../number/random";
import { found, type Outcome, refused } from "../../outcome";
import { numericalTolerance } from "./numerical-tolerance";
import { CHUNK, type Sampler } from "./sampler";
import { summarize } from "./summarize";

/**
 * Blocks of trials until the results stand still to δ. `digits` of u that count; `tolerance` divides δ: 1 by itself, 5 where
 * the result is to validate the GUM's (JCGM 101:2008, 8.2, note: a tolerance of δ/5 suffices).
 */
export type AdaptiveTrials = {
  readonly kind: "adaptive";
  readonly digits: 1 | 2;
  readonly divisor: number;
};

const LEAST_BLOCK = 10_000;

/** Mean and its standard deviation of a number per block, added up block by block (B. P. Welford's way). */
type Running = { mean: number; squares: number };

/**
 * JCGM 101:2008, 7.9.4: blocks of M = max(⌈100/(1 − p)⌉, 10⁴) trials until twice the standard deviation of the average over
 * blocks of y, u and both ends of the symmetric interval is at most δ (`numericalTolerance` of u over all trials). At the end
 * every trial lies in the workspace, for `summarize` to take them all together. A workspace that is full first ends it
 * with isSettled false. u = 0 to the last digit is settled: there is nothing to wait for.
 * Everything in the unit of the sampler's trials; p without unit.
 *
 * Refuses: a workspace for fewer than two blocks ("too-few"), and what `summarize` refuses of a block.
 */
export function* adaptiveTrials(
  sampler: Sampler,
  stream: RandomStream,
  probability: number,
  { digits, divisor }: AdaptiveTrials,
  workspace: Float64Array,
): Generator<{ readonly trials: number }, Outcome<{ readonly trials: number; readonly isSettled: boolean }>> {
  // 1 − 0.9975 is 0.0025 less a rounding: its 40 000 are still 40 000.
  const block = Math.max(Math.ceil(100 / (1 - probability) - 1e-6), LEAST_BLOCK);
  if (!(2 * block <= workspace.length)) {
    return refused(
      "too-few",
      `A workspace for ${workspace.length} trials: two blocks of ${block} are needed.`,
    );
  }
  const running: Running[] = Array.from({ length: 4 }, () => ({ mean: 0, squares: 0 }));
  let within = 0;
  let blocks = 0;
  for (;;) {
    const start = blocks * block;
    if (start + block > workspace.length) return found({ trials: start, isSettled: false });
    for (let at = start; at < start + block; at += CHUNK) {
      sampler(stream, workspace, at, Math.min(start + block, at + CHUNK));
    }
    const summary = summarize(workspace.subarray(start, start + block), probability);
    if (!summary.ok) return summary;
    blocks += 1;
    const { estimate, standardUncertainty, symmetric } = summary.value;
    within += standardUncertainty * standardUncertainty * (block - 1);
    const results = [estimate, standardUncertainty, symmetric.low, symmetric.high];
    results.forEach((result, n) => {
      add(running[n] as Running, result, blocks);
    });
    yield { trials: blocks * block };
    if (blocks < 2) continue;
    // The variance of all trials together: that within the blocks and that of their means.
    const between = (running[0] as Running).squares * block;
    const tolerance = numericalTolerance(Math.sqrt((within + between) / (blocks * block - 1)), digits);
    const allowed = tolerance.ok ? tolerance.value / divisor : 0;
    const isSettled = running.every(
      ({ squares }) => 2 * Math.sqrt(squares / (blocks * (blocks - 1))) <= allowed,
    );
    if (isSettled) return found({ trials: blocks * block, isSettled });
  }
}

function add(running: Running, value: number, count: number): void {
  const difference = value - running.mean;
  running.mean += difference / count;
  running.squares += difference * (value - running.mean);
}
