import { type Outcome, refused } from "../outcome";
import { describeRange, type ReferenceFunction } from "./reference-function";

/**
 * The problem of an emf (µV) that no temperature of the reference function gives: `not-finite`; `no-solution`
 * on the foot of a function that falls before it rises (type B below 250 °C, 0.291 mV), where two
 * temperatures or none give it; else `outside-range`. `lowestMicrovolt` is where the inverse begins (source:
 * the function's file); `place` goes before the message.
 */
export function refuseEmf(
  reference: ReferenceFunction,
  microvolt: number,
  lowestMicrovolt: number,
  place = "",
): Extract<Outcome<never>, { ok: false }> {
  if (!Number.isFinite(microvolt)) return refused("not-finite", `${place}emf ${microvolt} is not a number`);
  if (reference.inverseFromCelsius !== undefined && microvolt < lowestMicrovolt) {
    return refused(
      "no-solution",
      `${place}an emf of ${microvolt} µV has no one temperature: type ${reference.letter} has no inverse below ${reference.inverseFromCelsius} °C`,
    );
  }
  return refused(
    "outside-range",
    `${place}an emf of ${microvolt} µV has no temperature: ${describeRange(reference)}`,
  );
}
