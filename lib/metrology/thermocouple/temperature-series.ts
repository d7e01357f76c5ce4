import { found, type Outcome } from "../outcome";
import { directBlock } from "./direct-block";
import { inverseTable } from "./inverse-table";
import type { ReferenceFunction } from "./reference-function";
import { refuseEmf } from "./refuse-emf";
import { inverseBatch, temperaturesFrom } from "./temperatures-from";

/** Values worked on at a time: what they need stays in the processor's nearest memory. A multiple of four. */
const BATCH = 1024;

/**
 * t in °C (ITS-90) with E(t) = emf in µV for many values, the same bits as `temperature` one by one, its source and accuracy.
 * Problems: those of `temperature`, of the first value that has one, with its place counted from 0; then there are no values
 * at all.
 */
export function temperatureSeries(
  reference: ReferenceFunction,
  microvolt: Float64Array,
): Outcome<Float64Array> {
  const table = inverseTable(reference);
  const block = directBlock(reference);
  for (let i = 0; i < microvolt.length; i += 1) {
    const value = microvolt[i] as number;
    if (!(value >= table.fromMicrovolt && value <= table.toMicrovolt)) {
      return refuseEmf(reference, value, table.fromMicrovolt, `value ${i}: `);
    }
  }
  const celsius = new Float64Array(microvolt.length);
  const batch = inverseBatch(BATCH);
  for (let begin = 0; begin < microvolt.length; begin += BATCH) {
    const end = Math.min(begin + BATCH, microvolt.length);
    temperaturesFrom(table, block, microvolt.subarray(begin, end), batch, celsius.subarray(begin, end));
  }
  return found(celsius);
}
