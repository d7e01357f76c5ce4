import { exponential } from "../number/exponential";
import { logarithm } from "../number/logarithm";
import { mean } from "../number/mean";
import type { SettlingBlocks } from "./settling-blocks";

/** One pair of time constants, with the amplitudes that fit best (°C at the blocks' origin) and what they leave open. */
export type SettlingNode = {
  readonly fastSeconds: number;
  readonly slowSeconds: number;
  readonly fastCelsius: number;
  readonly slowCelsius: number;
  /** Σ of the squares and the product of the two centred terms: the inverse of the amplitudes' covariance over s². */
  readonly fastSquares: number;
  readonly product: number;
  readonly slowSquares: number;
  readonly residualSquares: number;
};

export type SettlingFit = {
  readonly nodes: readonly SettlingNode[];
  /** Of each node, relative to the best, which has 1. */
  readonly weights: readonly number[];
  readonly best: SettlingNode;
  /** Standard deviation of one block, °C, as large as it acts where successive blocks are correlated. */
  readonly blockCelsius: number;
};

/** Time constants tried: 40 s to an hour and a half, each 6 % above the one before: coarser steps cost more than noise does. */
const FIRST_SECONDS = 40;
const RATIO = 1.06;
const COUNT = 84;
/** Closer than this (twice) two terms can hardly be told apart, and fit noise by cancelling each other. */
const LEAST_STEPS_APART = 12;
/** T∞, two amplitudes, two time constants. */
const PARAMETERS = 5;
/** No thermometer here resolves better, °C: keeps data without any noise from being believed without limit. */
const RESOLUTION = 0.0005;
/** Further apart, blocks are taken as independent: what is left there is chance or the model's own fault. */
const MOST_LAGS = 30;

/**
 * T(x) = T∞ + A·e^(−x/τ_A) + B·e^(−x/τ_B) fitted to blocks, for all pairs of time constants of a grid.
 *
 * For given time constants the rest is linear (variable projection: G. H. Golub and V. Pereyra, SIAM J. Numer. Anal. 10
 * (1973) 413). Weight of a pair: its profile likelihood (RSS/RSS_best)^(−ν/2), noise of unknown size. ν counts the blocks as
 * worth as many independent ones as the residuals of the best fit show (`blocksForOne`), at least 1. Blocks in s and °C; at
 * least six of them, finite, over several minutes: `timeToStable` sees to that, so there are no error cases.
 */
export function settlingFit(blocks: SettlingBlocks): SettlingFit {
  const nodes = fitNodes(blocks);
  const best = nodes.reduce((a, b) => (b.residualSquares < a.residualSquares ? b : a));
  const count = blocks.seconds.length;
  const forOne = blocksForOne(blocks, best);
  const degreesOfFreedom = Math.max(1, count / forOne - PARAMETERS);
  const floor = count * RESOLUTION * RESOLUTION;
  const least = best.residualSquares + floor;
  const weights = nodes.map(({ residualSquares }) =>
    exponential((-degreesOfFreedom / 2) * logarithm((residualSquares + floor) / least)),
  );
  return { nodes, weights, best, blockCelsius: Math.sqrt((least / (count - PARAMETERS)) * forOne) };
}

function fitNodes({ seconds, celsius }: SettlingBlocks): SettlingNode[] {
  const y = centred(celsius);
  const total = dot(y, y);
  const taus: number[] = [];
  for (let tau = FIRST_SECONDS; taus.length < COUNT; tau *= RATIO) taus.push(tau);
  const terms = taus.map((tau) => {
    const values = centred(seconds.map((x) => exponential(-x / tau)));
    return { tau, values, squares: dot(values, values), onto: dot(values, y) };
  });
  const nodes: SettlingNode[] = [];
  for (const [i, fast] of terms.entries()) {
    for (const slow of terms.slice(i + LEAST_STEPS_APART)) {
      const product = dot(fast.values, slow.values);
      const determinant = fast.squares * slow.squares - product * product;
      const fastCelsius = (fast.onto * slow.squares - slow.onto * product) / determinant;
      const slowCelsius = (slow.onto * fast.squares - fast.onto * product) / determinant;
      nodes.push({
        fastSeconds: fast.tau,
        slowSeconds: slow.tau,
        fastCelsius,
        slowCelsius,
        fastSquares: fast.squares,
        product,
        slowSquares: slow.squares,
        residualSquares: Math.max(0, total - fastCelsius * fast.onto - slowCelsius * slow.onto),
      });
    }
  }
  return nodes;
}

/**
 * How many blocks are worth one independent block: 1 + 2·Σρ_k over the lags up to the first that is not positive, at least 1.
 * Source: variance of the mean of a correlated series (G. E. P. Box and G. M. Jenkins, Time Series Analysis; from memory).
 */
function blocksForOne({ seconds, celsius }: SettlingBlocks, node: SettlingNode): number {
  const residuals = centred(
    seconds.map(
      (x, i) =>
        (celsius[i] as number) -
        node.fastCelsius * exponential(-x / node.fastSeconds) -
        node.slowCelsius * exponential(-x / node.slowSeconds),
    ),
  );
  const squares = dot(residuals, residuals) + residuals.length * RESOLUTION * RESOLUTION;
  let blocks = 1;
  for (let lag = 1; lag <= MOST_LAGS; lag += 1) {
    const correlation = dot(residuals.slice(lag), residuals) / squares;
    if (correlation <= 0) break;
    blocks += 2 * correlation;
  }
  return blocks;
}

function centred(values: readonly number[]): number[] {
  const middle = mean(values);
  return values.map((value) => value - middle);
}

function dot(a: readonly number[], b: readonly number[]): number {
  let total = 0;
  for (const [i, value] of a.entries()) total += value * (b[i] as number);
  return total;
}
