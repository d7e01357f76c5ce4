import { joined, type Stretch, stretchOf } from "./stretch";

export type SlidingStretch = {
  /** Takes a reading that is later than all before. */
  push(seconds: number, celsius: number): void;
  /** Lets go of the readings before a time. */
  dropBefore(seconds: number): void;
  /** The readings held, as one stretch; null for none. */
  stretch(): Stretch | null;
  /** How many stretches have been joined so far: the work done. */
  joins(): number;
};

type Held = { readonly seconds: number; readonly celsius: number; readonly rest: Stretch };

/**
 * A window that slides over the readings of one reference: each reading is joined at most twice on its way through, however
 * long the window or the stream is, and once more per question asked.
 *
 * Source: a queue made of two stacks, each remembering the aggregate of what lies on it (folklore of sliding-window
 * aggregation; no document at hand). Chosen over running sums that subtract what leaves: those carry their rounding,
 * and a single NaN, for ever. A turn of the stacks costs one window at once, a few microseconds once in a window's time.
 * Seconds ascending, °C. No error cases: the caller sees to the order.
 */
export function slidingStretch(): SlidingStretch {
  /** Oldest on top; `rest` is the stretch from it to the youngest of this stack. */
  const leaving: Held[] = [];
  /** Youngest on top. */
  let arrived: { readonly seconds: number; readonly celsius: number }[] = [];
  let arrivedStretch: Stretch | null = null;
  let joins = 0;
  const join = (a: Stretch, b: Stretch): Stretch => {
    joins += 1;
    return joined(a, b);
  };
  const turn = (): void => {
    let rest: Stretch | null = null;
    for (const { seconds, celsius } of arrived.reverse()) {
      const one = stretchOf(seconds, celsius);
      rest = rest ? join(one, rest) : one;
      leaving.push({ seconds, celsius, rest });
    }
    arrived = [];
    arrivedStretch = null;
  };
  return {
    push(seconds, celsius) {
      arrived.push({ seconds, celsius });
      const one = stretchOf(seconds, celsius);
      arrivedStretch = arrivedStretch ? join(arrivedStretch, one) : one;
    },
    dropBefore(seconds) {
      for (;;) {
        if (leaving.length === 0) turn();
        const oldest = leaving.at(-1);
        if (!oldest || oldest.seconds >= seconds) return;
        leaving.pop();
      }
    },
    stretch() {
      const oldest = leaving.at(-1);
      if (!oldest) return arrivedStretch;
      return arrivedStretch ? join(oldest.rest, arrivedStretch) : oldest.rest;
    },
    joins: () => joins,
  };
}
