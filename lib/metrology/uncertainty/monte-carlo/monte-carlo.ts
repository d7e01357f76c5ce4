import { createStream, type RandomStream } from "../../number/random";
import { found, type Outcome, refused } from "../../outcome";
import { type AdaptiveTrials, adaptiveTrials } from "./adaptive-trials";
import { CHUNK, type Sampler } from "./sampler";
import { type Summary, summarize } from "./summarize";

/** A given number of trials, or as many as it takes (`AdaptiveTrials`). */
export type Trials = { readonly kind: "fixed"; readonly count: number } | AdaptiveTrials;

export type MonteCarloOptions = {
  /** Seed and stream: the same two give the same result, to the bit (`createStream`). */
  readonly seed: number;
  readonly stream: number;
  readonly probability: number;
  readonly trials: Trials;
};

export type MonteCarloResult = Summary & {
  readonly probability: number;
  readonly trials: number;
  readonly seed: number;
  readonly stream: number;
  /** Adaptive: whether the results settled before the workspace was full. A fixed number is taken as asked for. */
  readonly isSettled: boolean;
};

/** Trials made so far. */
export type Progress = { readonly trials: number };

/** Trials between two reports of progress when their number is fixed. */
const REPORT = 64 * CHUNK;

/**
 * Propagation of distributions (JCGM 101:2008, clause 7), in steps: each yield says how far it is, and whoever drives it may
 * stop there. `workspace` holds the trials and may serve one point after the other: nothing else grows with them.
 *
 * Results in the unit of the sampler's trials. Refuses: a workspace smaller than the trials asked for, or than two blocks of
 * adaptive ones ("too-few"), and what `summarize` and `adaptiveTrials` refuse.
 */
export function* monteCarloSteps(
  sampler: Sampler,
  options: MonteCarloOptions,
  workspace: Float64Array,
): Generator<Progress, Outcome<MonteCarloResult>> {
  const { seed, stream: number, probability, trials } = options;
  const stream = createStream(seed, number);
  const made =
    trials.kind === "fixed"
      ? yield* fixedTrials(sampler, stream, trials.count, workspace)
      : yield* adaptiveTrials(sampler, stream, probability, trials, workspace);
  if (!made.ok) return made;
  const summary = summarize(workspace.subarray(0, made.value.trials), probability);
  if (!summary.ok) return summary;
  return found({ ...summary.value, ...made.value, probability, seed, stream: number });
}

function* fixedTrials(
  sampler: Sampler,
  stream: RandomStream,
  count: number,
  workspace: Float64Array,
): Generator<Progress, Outcome<{ readonly trials: number; readonly isSettled: boolean }>> {
  if (!(count <= workspace.length)) {
    return refused("too-few", `${count} trials do not fit into a workspace for ${workspace.length}.`);
  }
  for (let start = 0; start < count; start += CHUNK) {
    sampler(stream, workspace, start, Math.min(count, start + CHUNK));
    if ((start + CHUNK) % REPORT === 0) yield { trials: Math.min(count, start + CHUNK) };
  }
  return found({ trials: count, isSettled: true });
}

/** `monteCarloSteps` driven to its end: the same results, units and refusals (JCGM 101:2008, clause 7). */
export function monteCarlo(
  sampler: Sampler,
  options: MonteCarloOptions,
  workspace: Float64Array,
): Outcome<MonteCarloResult> {
  const steps = monteCarloSteps(sampler, options, workspace);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
