import { mean } from "../number/mean";
import { found, type Outcome } from "../outcome";
import { type ControlLimits, limitsAround, whyNoChart } from "./control-limits";

/**
 * d2: mean range of two values of a normal distribution, in its standard deviations, 2/√π = 1.128 (ASTM MNL 7A, table of
 * factors for control charts; ISO 7870-2:2013). Limits of the individuals are 3/d2 = 2.660 mean ranges from the centre.
 */
export const D2 = 1.128;
/** D4 for two values: upper limit of the moving range in mean ranges (the same tables; the lower limit D3 is 0). */
export const D4 = 3.267;

export type IndividualsChart = {
  /** Limits of the values; σ is the mean moving range over d2, so the action limits stand 2.660 mean ranges off. */
  readonly individuals: ControlLimits;
  readonly meanMovingRange: number;
  /** A jump from one run to the next above this is out of control. */
  readonly movingRangeLimit: number;
};

/**
 * Individuals and moving range: σ from how successive runs differ, so that a slow drift does not widen the limits
 * that should show it.
 *
 * Source: ISO 7870-2:2013 (individuals and moving ranges); constants as `D2` and `D4` say. `values`: one for each run in
 * order of time, any one unit; the answer is in that unit. Problems: those of `controlLimits`.
 */
export function individualsChart(values: readonly number[]): Outcome<IndividualsChart> {
  const unfit = whyNoChart(values);
  if (unfit) return unfit;
  const ranges = values.slice(1).map((value, i) => Math.abs(value - (values[i] as number)));
  const meanMovingRange = mean(ranges);
  const individuals = limitsAround(mean(values), meanMovingRange / D2, values.length);
  if (!individuals.ok) return individuals;
  return found({ individuals: individuals.value, meanMovingRange, movingRangeLimit: D4 * meanMovingRange });
}
