import { exponential } from "../number/exponential";
import { standardNormal } from "../number/normal-deviate";
import { quantile } from "../number/quantile";
import { createStream, type RandomStream, uniform } from "../number/random";
import { found, type Outcome, refused } from "../outcome";
import { firstAfter, firstAtOrAfter } from "./bounds";
import { driftOfExponential, rangeOfExponentials } from "./exponential-window";
import { settlingBlocks } from "./settling-blocks";
import { type SettlingFit, type SettlingNode, settlingFit } from "./settling-fit";
import type { ReferenceSeries, StabilityCriterion } from "./stability-types";

/** When the criterion will be met: seconds on the scale of the readings. */
export type TimeToStable = {
  readonly nowSeconds: number;
  /** As likely before as after. */
  readonly medianSeconds: number;
  readonly fromSeconds: number;
  readonly toSeconds: number;
  /** Probability that the interval holds the time, 0.9. */
  readonly probability: number;
};

const PROBABILITY = 0.9;
/** What is older says little about the tail, and a furnace is no sum of two terms for ever. */
const LONGEST_SECONDS = 7200;
const LEAST_SECONDS = 300;
const LEAST_BLOCKS = 15;
const DRAWS = 400;
/** A furnace that needs longer than this is told to be looked at, not waited for. */
const HORIZON_SECONDS = 21600;
const STEPS_IN_WINDOW = 40;
/**
 * The interval on either side of its median: the draws' own width this much wider, and a share of what remains for a
 * furnace not being two terms and a wandering noise, the two added in squares. Set on 2000 simulated settlings of training
 * seeds (from 1 000 000 on, a tenth disturbed late), of which the interval then held 90 %; none of them is in the proof.
 */
const WIDENED = 1.4;
const SHARE_OF_REST = 0.1;

/**
 * When the trailing window of least length will meet |slope| × length, and the spread where the criterion limits it, from
 * the references' approach to the setpoint: median and 90 % interval.
 *
 * Method: two exponential terms fitted over a grid of time constants (`settlingFit`); 400 draws from what the fit leaves open
 * (time constants by profile likelihood, amplitudes and the noise of the window's slope normal); for each draw the first time
 * at which the window meets the limits; quantiles 5 %, 50 % and 95 % of these, widened as said at `WIDENED`. A
 * parametric bootstrap in all but name (JCGM 101:2008, clause 7, for propagation by draws); the arrangement is our own. Deterministic:
 * the draws come from a fixed seed.
 *
 * `references` °C, seconds ascending; `sinceSeconds`: when they came near the setpoint, the ramp before it excluded;
 * `nowSeconds`: up to which readings are used. The references' agreement is not predicted: it follows no such law. Problems:
 * `outside-range` for a `nowSeconds` not after `sinceSeconds`; `too-few` before five minutes or fifteen blocks; `not-finite`
 * for a reading that is no number; `no-solution` while one in twenty draws does not settle within six hours, which is what
 * "too early to say" means.
 */
export function timeToStable(
  references: readonly ReferenceSeries[],
  sinceSeconds: number,
  nowSeconds: number,
  criterion: StabilityCriterion,
): Outcome<TimeToStable> {
  if (!(nowSeconds > sinceSeconds))
    return refused("outside-range", "there is nothing before now to judge by");
  const origin = Math.max(sinceSeconds, nowSeconds - LONGEST_SECONDS);
  const blocks = settlingBlocks(references, origin, nowSeconds);
  if (nowSeconds - origin < LEAST_SECONDS || blocks.seconds.length < LEAST_BLOCKS) {
    return refused("too-few", "too early to say: less than five minutes near the setpoint have been read");
  }
  if (!blocks.celsius.every(Number.isFinite)) return refused("not-finite", "a reading is not a number");
  const fit = settlingFit(blocks);
  const earliest = Math.max(nowSeconds, sinceSeconds + criterion.minimumSeconds) - origin;
  const density = blocks.seconds.length / (nowSeconds - origin);
  const sought: Window = {
    criterion,
    earliest,
    slopeNoise: fit.blockCelsius * Math.sqrt(12 / (density * criterion.minimumSeconds)),
    noiseRange: rangeOfNoise(references, fit.best, origin, nowSeconds, criterion.minimumSeconds),
  };
  const times = drawTimes(fit, sought);
  const [low, median, high] = [0.05, 0.5, 0.95].map((p) => quantile(times, p)) as [number, number, number];
  if (!(high < HORIZON_SECONDS + earliest)) {
    return refused("no-solution", "too early to say: the approach does not show yet when it will end");
  }
  const share = SHARE_OF_REST * (median - (nowSeconds - origin));
  const reach = (x: number): number =>
    Math.sqrt(WIDENED * WIDENED * (x - median) * (x - median) + share * share);
  return found({
    nowSeconds,
    medianSeconds: origin + median,
    fromSeconds: origin + Math.max(earliest, median - reach(low)),
    toSeconds: origin + median + reach(high),
    probability: PROBABILITY,
  });
}

type Window = {
  readonly criterion: StabilityCriterion;
  /** Where a first window can end, in seconds from the blocks' origin. */
  readonly earliest: number;
  /** Standard deviation of slope × length by noise alone, °C. */
  readonly slopeNoise: number;
  readonly noiseRange: number;
};

function drawTimes(fit: SettlingFit, sought: Window): number[] {
  const stream = createStream(1);
  const cumulative: number[] = [];
  let total = 0;
  for (const weight of fit.weights) {
    total += weight;
    cumulative.push(total);
  }
  return Array.from({ length: DRAWS }, () => {
    const place = uniform(stream) * total;
    const index = cumulative.findIndex((sum) => sum > place);
    return firstStable(drawn(fit.nodes[index] as SettlingNode, fit.blockCelsius, stream), sought, stream);
  });
}

/** A node with amplitudes drawn from their joint normal distribution: the slow one, then the fast one given it. */
function drawn(node: SettlingNode, s: number, stream: RandomStream): SettlingNode {
  const { fastSquares, slowSquares, product } = node;
  const off =
    s * standardNormal(stream) * Math.sqrt(fastSquares / (fastSquares * slowSquares - product * product));
  const own = (s * standardNormal(stream)) / Math.sqrt(fastSquares);
  return {
    ...node,
    slowCelsius: node.slowCelsius + off,
    fastCelsius: node.fastCelsius - (product / fastSquares) * off + own,
  };
}

function firstStable(node: SettlingNode, sought: Window, stream: RandomStream): number {
  const { criterion, earliest } = sought;
  const length = criterion.minimumSeconds;
  const noise = sought.slopeNoise * standardNormal(stream);
  const fast = node.fastCelsius * driftOfExponential(length, node.fastSeconds);
  const slow = node.slowCelsius * driftOfExponential(length, node.slowSeconds);
  const a = { celsius: node.fastCelsius, tauSeconds: node.fastSeconds };
  const b = { celsius: node.slowCelsius, tauSeconds: node.slowSeconds };
  const step = length / STEPS_IN_WINDOW;
  const spreadLimit = criterion.spreadCelsius ?? Number.POSITIVE_INFINITY;
  for (let x = earliest; x <= earliest + HORIZON_SECONDS; x += step) {
    const drift =
      fast * exponential(-x / node.fastSeconds) + slow * exponential(-x / node.slowSeconds) + noise;
    if (Math.abs(drift) > criterion.slopeTimesLengthCelsius) continue;
    const range = rangeOfExponentials(a, b, x - length, x);
    if (Math.sqrt(range * range + sought.noiseRange * sought.noiseRange) <= spreadLimit) return x;
  }
  return earliest + HORIZON_SECONDS;
}

/** The largest range of a reference about the best fit over the last window, °C. */
function rangeOfNoise(
  references: readonly ReferenceSeries[],
  fit: SettlingNode,
  origin: number,
  nowSeconds: number,
  length: number,
): number {
  let largest = 0;
  for (const { seconds, celsius } of references) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    const last = firstAfter(seconds, nowSeconds);
    for (let i = firstAtOrAfter(seconds, Math.max(origin, nowSeconds - length)); i < last; i += 1) {
      const x = (seconds[i] as number) - origin;
      const noise =
        (celsius[i] as number) -
        fit.fastCelsius * exponential(-x / fit.fastSeconds) -
        fit.slowCelsius * exponential(-x / fit.slowSeconds);
      low = Math.min(low, noise);
      high = Math.max(high, noise);
    }
    largest = Math.max(largest, high - low);
  }
  return largest;
}
