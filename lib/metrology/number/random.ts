import { fillWords, jump } from "./xoshiro";

/** A stream of random numbers: the generator's state and a supply of words drawn ahead. Not for secrets. */
export type RandomStream = {
  readonly state: Int32Array;
  readonly words: Int32Array;
  /** Place of the next unused word; always even, as every draw takes two. */
  next: number;
};

const SUPPLY = 2048;
/** Words thrown away after seeding, so that seeds which differ in one bit have nothing in common. */
const WARM_UP = 64;
const TWO_TO_32 = 4294967296;
const TWO_TO_26 = 67108864;
const TWO_TO_MINUS_53 = 1 / 9007199254740992;

/**
 * A stream that depends on nothing but its two numbers: the same in every engine and on every day.
 * Source: `fillWords`; the seed is spread over the state by this project's own scheme. Streams of one seed lie 2^64 words apart (`jump`) and cannot overlap: one for each point of a run. A stream with
 * number n takes n jumps to reach, about a microsecond each.
 *
 * `seed`: a whole number from 0 to 2^53 − 1, every bit of which counts; `number`: whole, ≥ 0. No unit.
 * Other values are not refused: the fraction is cut off, and a negative or NaN `number` is stream 0.
 */
export function createStream(seed: number, number = 0): RandomStream {
  // Two words of digits (of π and of the golden ratio) keep the state of seed 0 from being all zeros.
  const state = Int32Array.of(seed, Math.floor(seed / TWO_TO_32), 0x243f6a88, 0x9e3779b9);
  fillWords(state, new Int32Array(WARM_UP));
  for (let jumps = 0; jumps < number; jumps += 1) jump(state);
  return { state, words: new Int32Array(SUPPLY), next: SUPPLY };
}

/** Draws the next words when all are used (source: `fillWords`); no unit, no error cases. */
export function refill(stream: RandomStream): void {
  fillWords(stream.state, stream.words);
  stream.next = 0;
}

/**
 * The next number uniform on [0, 1), a multiple of 2^−53: two words, 27 and 26 bits of them (JCGM 101:2008, 6.4.2 and C.3
 * ask for a generator of proven quality). Never 1; 0 once in 2^53 draws. No unit, no error cases.
 */
export function uniform(stream: RandomStream): number {
  if (stream.next === SUPPLY) refill(stream);
  const high = (stream.words[stream.next] as number) >>> 5;
  const low = (stream.words[stream.next + 1] as number) >>> 6;
  stream.next += 2;
  return (high * TWO_TO_26 + low) * TWO_TO_MINUS_53;
}

/**
 * Adds Σ amountₖ·(2u − 1) to each of values[from … to − 1], u the next numbers of `uniform`, one for each amount and value: draws
 * from rectangles of half-widths `amounts` (JCGM 101:2008, 6.4.2.4). Amounts and values in one unit; no error cases. Its own
 * loop for the reason of `addNormals`.
 */
export function addRectangles(
  stream: RandomStream,
  amounts: Float64Array,
  values: Float64Array,
  from: number,
  to: number,
): void {
  const { words } = stream;
  let { next } = stream;
  for (let i = from; i < to; i += 1) {
    let sum = 0;
    for (let k = 0; k < amounts.length; k += 1) {
      if (next === SUPPLY) {
        refill(stream);
        next = 0;
      }
      const high = (words[next] as number) >>> 5;
      const low = (words[next + 1] as number) >>> 6;
      next += 2;
      sum += (amounts[k] as number) * (2 * ((high * TWO_TO_26 + low) * TWO_TO_MINUS_53) - 1);
    }
    values[i] = (values[i] as number) + sum;
  }
  stream.next = next;
}
