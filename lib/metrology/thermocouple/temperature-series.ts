import { found, type Outcome, refused } from "../outcome";
import { type InverseTable, inverseTable } from "./inverse-table";
import type { ReferenceFunction } from "./reference-function";
import { refuseEmf } from "./refuse-emf";
import { inverseBatch, temperaturesFrom } from "./temperatures-from";

/** Values worked on at a time: what they need stays in the processor's nearest memory. A multiple of four. */
const BATCH = 256;

/** The place of the first emf without a temperature, or −1. */
function firstOutside(table: InverseTable, microvolt: Float64Array): number {
  const { fromMicrovolt, toMicrovolt } = table;
  for (let i = 0; i < microvolt.length; i += 1) {
    const value = microvolt[i] as number;
    if (!(value >= fromMicrovolt && value <= toMicrovolt)) return i;
  }
  return -1;
}

/**
 * t in °C (ITS-90) with E(t) = emf in µV for many values, the same bits as `temperature` one by one, its
 * source and accuracy.
 * Written to `into` and given back, or to a new array; `into` may be longer, and what lies beyond stays.
 * Problems: those of `temperature`, of the first value that has one, with its place counted from 0;
 * `not-applicable` when `into` is too short.
 */
export function temperatureSeries(
  reference: ReferenceFunction,
  microvolt: Float64Array,
  into: Float64Array = new Float64Array(microvolt.length),
): Outcome<Float64Array> {
  if (into.length < microvolt.length) return refused("not-applicable", "no room for so many values");
  const table = inverseTable(reference);
  const bad = firstOutside(table, microvolt);
  if (bad >= 0) return refuseEmf(reference, microvolt[bad] as number, table.fromMicrovolt, `value ${bad}: `);
  const batch = inverseBatch(BATCH);
  for (let begin = 0; begin < microvolt.length; begin += BATCH) {
    const count = Math.min(BATCH, microvolt.length - begin);
    temperaturesFrom(table, microvolt, begin, count, batch, into);
  }
  return found(into);
}
