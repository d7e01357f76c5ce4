import { normalQuantile } from "@/lib/metrology/number/normal";

/** A stream of pseudo-random numbers, the same for the same seed in every engine. Not for secrets. */
export type Random = {
  /** Uniform on [0, 1). */
  readonly uniform: () => number;
  /** Rectangular on [−halfWidth, +halfWidth). */
  readonly rectangular: (halfWidth: number) => number;
  /** Normal, mean zero. */
  readonly normal: (standardDeviation: number) => number;
  readonly pick: <T>(items: readonly T[]) => T;
};

/**
 * 32-bit mixing generator (Weyl sequence with a xorshift-multiply finaliser); period 2³², far more than one run draws.
 * Normal numbers by the inverse of the distribution function, so that one draw is one number and no engine's own
 * logarithm takes part.
 */
export const randomFrom = (seed: number): Random => {
  let state = (seed ^ 0x9e3779b9) >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  for (let warmUp = 0; warmUp < 8; warmUp++) uniform();

  const standardNormal = (): number =>
    normalQuantile((Math.floor(uniform() * 4294967296) + 0.5) / 4294967296);

  return {
    uniform,
    rectangular: (halfWidth) => (2 * uniform() - 1) * halfWidth,
    normal: (standardDeviation) => standardNormal() * standardDeviation,
    pick: (items) => {
      const item = items[Math.floor(uniform() * items.length)];
      if (item === undefined) throw new RangeError("pick needs at least one item");
      return item;
    },
  };
};
