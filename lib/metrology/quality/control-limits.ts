import { mean } from "../number/mean";
import { sum } from "../number/sum";
import { found, type Outcome, refused } from "../outcome";

/** Fewer runs do not show what the process does by itself (common practice, no source). */
export const LEAST_RUNS = 20;
const WARNING_SIGMAS = 2;
const ACTION_SIGMAS = 3;

/** Limits of a chart, in the unit of its values. */
export type ControlLimits = {
  readonly runs: number;
  readonly centre: number;
  readonly standardDeviation: number;
  readonly warning: readonly [low: number, high: number];
  readonly action: readonly [low: number, high: number];
};

/**
 * Limits of a check standard's chart: x̄ ± 2s warn, x̄ ± 3s ask for action.
 *
 * Source: Shewhart chart with limits from past runs (ISO 7870-2:2013; clause not at hand). s has n − 1 degrees of freedom
 * (JCGM 100:2008, 4.2.2). `values`: one for each run, in any one unit, all from before the run that will be judged; the
 * answer is in that unit. Problems: `too-few` under 20 runs, `not-finite` for a value that is no number, `no-solution`
 * where all runs gave the same value.
 */
export function controlLimits(values: readonly number[]): Outcome<ControlLimits> {
  const unfit = whyNoChart(values);
  if (unfit) return unfit;
  const centre = mean(values);
  const squares = values.map((value) => (value - centre) * (value - centre));
  const standardDeviation = Math.sqrt(sum(squares) / (values.length - 1));
  return limitsAround(centre, standardDeviation, values.length);
}

/**
 * What a chart's history is refused for, or null: `too-few`, `not-finite` as `controlLimits` says. Values in any one
 * unit. Source: laboratory practice as `LEAST_RUNS` says.
 */
export function whyNoChart(values: readonly number[]): ReturnType<typeof refused> | null {
  if (values.length < LEAST_RUNS) {
    return refused("too-few", `limits need ${LEAST_RUNS} runs; there are ${values.length}`);
  }
  const at = values.findIndex((value) => !Number.isFinite(value));
  return at < 0 ? null : refused("not-finite", `run ${at + 1} has no number`);
}

/**
 * centre ± 2σ and ± 3σ, all in one unit (source: `controlLimits`). Problem: `no-solution` where σ is not above 0.
 */
export function limitsAround(
  centre: number,
  standardDeviation: number,
  runs: number,
): Outcome<ControlLimits> {
  if (!(standardDeviation > 0))
    return refused("no-solution", "all runs gave the same value: no limits can be drawn");
  const at = (sigmas: number): readonly [number, number] => [
    centre - sigmas * standardDeviation,
    centre + sigmas * standardDeviation,
  ];
  return found({ runs, centre, standardDeviation, warning: at(WARNING_SIGMAS), action: at(ACTION_SIGMAS) });
}
