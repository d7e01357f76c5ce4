/** Draws from a seed: the same faults in every run and on every machine. */
export type Draw = { readonly below: (count: number) => number; readonly of: <T>(all: readonly T[]) => T };

export const draws = (seed: number): Draw => {
  // Seeds that lie side by side must not draw alike.
  let state = Math.imul(seed ^ (seed >>> 15), 0x9e3779b1) >>> 0;
  const next = (): number => {
    // A linear congruential generator (Numerical Recipes); its high bits are good enough to choose a place.
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return ((state ^ (state >>> 15)) >>> 0) / 2 ** 32;
  };
  const below = (count: number) => Math.floor(next() * count);
  const of = <T>(all: readonly T[]): T => {
    const found = all[below(all.length)];
    if (found === undefined) throw new Error("There is nothing of this kind in the fixture.");
    return found;
  };
  return { below, of };
};
