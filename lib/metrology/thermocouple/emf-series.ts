import { found, type Outcome, refused } from "../outcome";
import { type DirectBlock, directBlock, emfsAt } from "./direct-block";
import { type ReferenceFunction, temperatureRange } from "./reference-function";
import { refuseTemperature } from "./refuse-temperature";

/** Values worked on at a time: what they need stays in the processor's nearest memory. A multiple of four. */
const BATCH = 256;

/**
 * Bounds in °C: of the function, and where its second and third piece begin (the end where there is none).
 */
type Bounds = {
  readonly from: number;
  readonly to: number;
  readonly firstJoin: number;
  readonly secondJoin: number;
};

/** Numbers the piece of each value of a batch; the place of the first value outside the range, or −1. */
function numberPieces(
  bounds: Bounds,
  celsius: Float64Array,
  begin: number,
  count: number,
  which: Int32Array,
): number {
  const { from, to, firstJoin, secondJoin } = bounds;
  for (let i = 0; i < count; i += 1) {
    const t = celsius[begin + i] as number;
    if (!(t >= from && t <= to)) return begin + i;
    which[i] = Number(t > firstJoin) + Number(t > secondJoin);
  }
  return -1;
}

/**
 * The last values, fewer than four: in arrays of their own, since four at a time would reach beyond the end.
 */
function finish(block: DirectBlock, which: Int32Array, celsius: Float64Array, into: Float64Array): void {
  const begin = celsius.length - (celsius.length % 4);
  const last = new Float64Array(4);
  const values = new Float64Array(4);
  last.set(celsius.subarray(begin));
  emfsAt(block, which, last, values, 0, 4);
  into.set(values.subarray(0, celsius.length - begin), begin);
}

/**
 * E(t) in µV of many temperatures in °C, the same bits as `emf` one by one and its source; several times
 * faster. Written to `into` and given back, or to a new array; `into` may be longer, and what lies beyond
 * stays.
 * Problems: those of `emf`, of the first value that has one, with its place counted from 0; `not-applicable`
 * when `into` is too short.
 * Then the content of `into` means nothing.
 */
export function emfSeries(
  reference: ReferenceFunction,
  celsius: Float64Array,
  into: Float64Array = new Float64Array(celsius.length),
): Outcome<Float64Array> {
  if (into.length < celsius.length) return refused("not-applicable", "no room for so many values");
  const { fromCelsius: from, toCelsius: to } = temperatureRange(reference);
  const [first, second] = reference.pieces;
  const bounds = { from, to, firstJoin: first.toCelsius, secondJoin: second ? second.toCelsius : to };
  const block = directBlock(reference);
  const which = new Int32Array(BATCH);
  for (let begin = 0; begin < celsius.length; begin += BATCH) {
    const count = Math.min(BATCH, celsius.length - begin);
    const bad = numberPieces(bounds, celsius, begin, count, which);
    if (bad >= 0) return refuseTemperature(reference, celsius[bad] as number, `value ${bad}: `);
    const whole = count - (count % 4);
    emfsAt(block, which, celsius, into, begin, whole);
    if (whole < count) finish(block, which.subarray(whole, whole + 4), celsius, into);
  }
  return found(into);
}
