import { mean } from "../number/mean";
import { sum } from "../number/sum";
import { found, type Outcome, refused } from "../outcome";
import { checkTimedValues, type TimedValues } from "./at-common-times";

export type BlockTypeA = {
  readonly mean: number;
  /** s of the block means / √blocks. */
  readonly standardUncertainty: number;
  /** Blocks less one, and less what was fitted to the readings before. */
  readonly degreesOfFreedom: number;
  readonly blocks: number;
  /** s² of single readings / u²: how many independent readings the scans are worth; at most their number. */
  readonly effectiveNumber: number;
};

const LEAST_BLOCKS = 3;

/**
 * Type A of a mean from means over blocks of at least one control period: successive scans are correlated, and s/√n of
 * them claims far too much (600 scans of 1 s with a correlation time of 60 s are worth about 5). Method of batch means:
 * P. W. Glynn and D. L. Iglehart, Math. Oper. Res. 15 (1990) 1 (from memory); s/√n of the means by JCGM 100:2008, 4.2.3.
 * The readings are cut into as many equal blocks as `blockSeconds` fits into their time; a linear drift is to be taken
 * out before, and `fitted` says how many parameters beside the mean that took (1 for a slope): each costs a degree of
 * freedom (JCGM 100:2008, H.3.2, ν = n − parameters), or four blocks would claim too little. Unit: that of the values.
 * Problems: `too-few` for fewer than three blocks and one more for each fitted parameter, or a block without reading;
 * `not-finite`; `not-applicable` for a block's length that is not above zero, or times that do not rise.
 */
export function typeAFromBlocks(
  series: TimedValues,
  blockSeconds: number,
  fitted: 0 | 1 = 0,
): Outcome<BlockTypeA> {
  const refusal = checkTimedValues(series);
  if (refusal) return refusal;
  if (!(blockSeconds > 0)) return refused("not-applicable", `a block of ${blockSeconds} s`);
  const { seconds, values } = series;
  const start = seconds[0] as number;
  const span = (seconds.at(-1) as number) - start;
  // A reading stands for the time up to the next: n readings span n steps of time, not n − 1.
  const whole = values.length > 1 ? (span * values.length) / (values.length - 1) : 0;
  const count = Math.floor(whole / blockSeconds + 1e-9);
  const least = LEAST_BLOCKS + fitted;
  if (count < least) {
    return refused("too-few", `${whole} s give ${count} blocks of ${blockSeconds} s: at least ${least}`);
  }
  const blocks: number[][] = Array.from({ length: count }, () => []);
  for (const [i, value] of values.entries()) {
    const place = Math.floor((((seconds[i] as number) - start) / whole) * count + 1e-9);
    (blocks[place] as number[]).push(value);
  }
  if (blocks.some((block) => block.length === 0)) return refused("too-few", "a block holds no reading");
  const means = blocks.map(mean);
  const square = varianceOf(means, fitted) / count;
  const single = varianceOf(values, fitted);
  return found({
    mean: mean(means),
    standardUncertainty: Math.sqrt(square),
    degreesOfFreedom: count - 1 - fitted,
    blocks: count,
    effectiveNumber: square > 0 ? Math.min(values.length, single / square) : values.length,
  });
}

/** s², n − 1 in the denominator (JCGM 100:2008, eq. 4), and one less for each parameter fitted. */
function varianceOf(values: readonly number[], fitted: number): number {
  const centre = mean(values);
  return sum(values.map((value) => (value - centre) * (value - centre))) / (values.length - 1 - fitted);
}
