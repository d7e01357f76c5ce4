import { polynomial } from "../number/polynomial";
import { solveIncreasing, type ValueAndSlope } from "../number/solve-increasing";
import { found, type Outcome, refused } from "../outcome";
import { pieceEmf } from "./emf";
import { describeRange, pieceAt, type ReferenceFunction, temperatureRange } from "./reference-function";
import { pieceSeebeck } from "./seebeck";

/** Well below the last digit anyone can measure, well above the noise of float64 in E(t). */
const TOLERANCE_CELSIUS = 1e-11;

/** What is added to the reference function, e.g. a certificate's deviation: value in µV, slope in µV/°C. */
export type AddedEmf = (celsius: number) => ValueAndSlope;

const nothingAdded: AddedEmf = () => ({ value: 0, slope: 0 });

function startValue(reference: ReferenceFunction, microvolt: number): number {
  const millivolt = microvolt / 1000;
  const range = reference.startValues.find((s) => millivolt >= s.fromMillivolt && millivolt <= s.toMillivolt);
  return range ? polynomial(range.celsius, millivolt) : Number.NaN;
}

/**
 * t with E(t) + added(t) = emf. The published inverse polynomials miss by up to 0.06 °C (type K), so the
 * direct function is solved; the inverse only gives the start value. Holds wherever E is rising, which is
 * the whole range for K, N, R and S.
 */
export function temperature(
  reference: ReferenceFunction,
  microvolt: number,
  added: AddedEmf = nothingAdded,
): Outcome<number> {
  if (!Number.isFinite(microvolt)) return refused("not-finite", `emf ${microvolt} is not a number`);
  const { fromCelsius: low, toCelsius: high } = temperatureRange(reference);
  const total = (celsius: number): ValueAndSlope => {
    const piece = pieceAt(reference, celsius);
    if (!piece) return { value: Number.NaN, slope: Number.NaN };
    const extra = added(celsius);
    return {
      value: pieceEmf(piece, celsius) + extra.value,
      slope: pieceSeebeck(piece, celsius) + extra.slope,
    };
  };
  if (!(microvolt >= total(low).value && microvolt <= total(high).value)) {
    return refused(
      "outside-range",
      `an emf of ${microvolt} µV has no temperature: ${describeRange(reference)}`,
    );
  }
  return found(
    solveIncreasing(total, microvolt, { low, high }, startValue(reference, microvolt), TOLERANCE_CELSIUS),
  );
}
