import { mean } from "../number/mean";
import type { ReferenceSeries } from "./stability-types";

/** Means over equal stretches of time, of the references together: seconds since `originSeconds`, and °C. */
export type SettlingBlocks = {
  readonly originSeconds: number;
  readonly seconds: readonly number[];
  readonly celsius: readonly number[];
};

const SHORTEST_SECONDS = 10;
const MOST_BLOCKS = 400;

type Block = { count: number; seconds: number; celsius: number };

/**
 * The references' mean in at most 400 blocks of at least ten seconds: enough to follow a furnace by, and the work of a fit
 * does not grow with the scan rate. Each reference counts once in a block however often it was read, so that two
 * references a constant apart do not look like noise. A block that lacks one of them is left out.
 *
 * `references`: seconds ascending, °C. `fromSeconds`, `toSeconds`: both included. Empty without a reading; a value that
 * is no number makes its block NaN. Source: our own arrangement.
 */
export function settlingBlocks(
  references: readonly ReferenceSeries[],
  fromSeconds: number,
  toSeconds: number,
): SettlingBlocks {
  const length = Math.max(SHORTEST_SECONDS, (toSeconds - fromSeconds) / MOST_BLOCKS);
  const filled = references.map((reference) => fill(reference, fromSeconds, toSeconds, length));
  const seconds: number[] = [];
  const celsius: number[] = [];
  for (const number of filled[0]?.keys() ?? []) {
    const together = filled.flatMap((blocks) => blocks.get(number) ?? []);
    if (together.length < references.length) continue;
    seconds.push(mean(together.map((block) => block.seconds / block.count)) - fromSeconds);
    celsius.push(mean(together.map((block) => block.celsius / block.count)));
  }
  return { originSeconds: fromSeconds, seconds, celsius };
}

function fill(
  reference: ReferenceSeries,
  fromSeconds: number,
  toSeconds: number,
  length: number,
): ReadonlyMap<number, Block> {
  const blocks = new Map<number, Block>();
  for (let i = 0; i < reference.seconds.length; i += 1) {
    const t = reference.seconds[i] as number;
    if (t < fromSeconds || t > toSeconds) continue;
    const number = Math.floor((t - fromSeconds) / length);
    const block = blocks.get(number) ?? { count: 0, seconds: 0, celsius: 0 };
    block.count += 1;
    block.seconds += t;
    block.celsius += reference.celsius[i] as number;
    blocks.set(number, block);
  }
  return blocks;
}
