import { solveIncreasing, type ValueAndSlope } from "../number/solve-increasing";
import { found, type Outcome, refused } from "../outcome";
import { pieceEmf } from "./emf";
import { inverseTable } from "./inverse-table";
import type { ReferenceFunction } from "./reference-function";
import { refuseEmf } from "./refuse-emf";
import { pieceSeebeck } from "./seebeck";
import { inverseBatch, temperaturesFrom } from "./temperatures-from";

/** Well below the last digit anyone can measure, well above the noise of float64 in E(t). */
const TOLERANCE_CELSIUS = 1e-11;

/** What is added to the reference function, e.g. a certificate's deviation: value in µV, slope in µV/°C. */
export type AddedEmf = (celsius: number) => ValueAndSlope;

// Room for one value; nothing in it is read before it is written.
const oneEmf = new Float64Array(1);
const oneTemperature = new Float64Array(1);
const room = inverseBatch(4);

/**
 * t in °C (ITS-90) with E(t) + added(t) = emf in µV, reference junction at 0 °C. The published inverse
 * polynomials (NIST SRD 60) miss by up to 0.06 °C, so the direct function is solved: |t(E(t)) − t| ≤ 1e-9 °C
 * from −200 °C up, ≤ 1e-7 °C below,
 * where its terms cancel. At a join the lower piece holds. What is added must leave the sum rising.
 * Problems: `not-finite`; `outside-range` for an emf that no temperature of the range gives; `no-solution`
 * below 250 °C (0.291 mV) of type B, and where what is added gives no number.
 */
export function temperature(
  reference: ReferenceFunction,
  microvolt: number,
  added?: AddedEmf,
): Outcome<number> {
  const table = inverseTable(reference);
  if (added) return temperatureWith(reference, microvolt, added);
  if (!(microvolt >= table.fromMicrovolt && microvolt <= table.toMicrovolt)) {
    return refuseEmf(reference, microvolt, table.fromMicrovolt);
  }
  oneEmf[0] = microvolt;
  temperaturesFrom(table, oneEmf, 0, 1, room, oneTemperature);
  return found(oneTemperature[0] as number);
}

function temperatureWith(reference: ReferenceFunction, microvolt: number, added: AddedEmf): Outcome<number> {
  const without = temperature(reference, microvolt);
  const start = without.ok ? without.value : Number.NaN;
  const noNumber = refused("no-solution", `type ${reference.letter} with what is added gives no temperature`);
  const { pieces } = inverseTable(reference);
  let lowest = Number.NaN;
  for (const { piece, fromCelsius, toCelsius } of pieces) {
    const total = (celsius: number): ValueAndSlope => {
      const extra = added(celsius);
      return {
        value: pieceEmf(piece, celsius) + extra.value,
        slope: pieceSeebeck(piece, celsius) + extra.slope,
      };
    };
    const bottom = total(fromCelsius).value;
    const top = total(toCelsius).value;
    if (Number.isNaN(bottom + top)) return noNumber;
    if (Number.isNaN(lowest)) lowest = bottom;
    if (!(microvolt >= lowest)) return refuseEmf(reference, microvolt, lowest);
    if (microvolt <= top) {
      const range = { low: fromCelsius, high: toCelsius };
      const celsius = solveIncreasing(total, microvolt, range, start, TOLERANCE_CELSIUS);
      return Number.isNaN(celsius) ? noNumber : found(celsius);
    }
  }
  return refuseEmf(reference, microvolt, lowest);
}
