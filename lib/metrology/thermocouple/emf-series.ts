import { found, type Outcome } from "../outcome";
import { directBlock, emfsAt } from "./direct-block";
import { type ReferenceFunction, temperatureRange } from "./reference-function";
import { refuseTemperature } from "./refuse-temperature";

/** Values worked on at a time: what they need stays in the processor's nearest memory. A multiple of four. */
const BATCH = 1024;

/**
 * E(t) in µV of many temperatures in °C, the same bits as `emf` one by one and its source; several times faster.
 * Problems: those of `emf`, of the first value that has one, with its place counted from 0; then there are no values at all.
 */
export function emfSeries(reference: ReferenceFunction, celsius: Float64Array): Outcome<Float64Array> {
  const { fromCelsius, toCelsius } = temperatureRange(reference);
  const [first, second] = reference.pieces;
  const firstJoin = first.toCelsius;
  const secondJoin = second === undefined ? toCelsius : second.toCelsius;
  const block = directBlock(reference);
  const microvolt = new Float64Array(celsius.length);
  const which = new Int32Array(BATCH);
  const batch = new Float64Array(BATCH);
  const values = new Float64Array(BATCH);
  for (let begin = 0; begin < celsius.length; begin += BATCH) {
    const count = Math.min(BATCH, celsius.length - begin);
    for (let i = 0; i < count; i += 1) {
      const t = celsius[begin + i] as number;
      if (!(t >= fromCelsius && t <= toCelsius)) {
        return refuseTemperature(reference, t, `value ${begin + i}: `);
      }
      which[i] = Number(t > firstJoin) + Number(t > secondJoin);
      batch[i] = t;
    }
    emfsAt(block, which, batch, values, count);
    microvolt.set(count === BATCH ? values : values.subarray(0, count), begin);
  }
  return found(microvolt);
}
