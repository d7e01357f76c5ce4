import { found, type Outcome, refused } from "../outcome";
import type { ReferenceFunction } from "../thermocouple/reference-function";
import { seebeck } from "../thermocouple/seebeck";
import { seebeckSlope } from "../thermocouple/seebeck-slope";
import { emfAtNominal } from "./emf-at-nominal";

/** How far a sensor's emf may be carried from the furnace's temperature to the nominal, °C (laboratory policy). */
export const NORMALISATION_LIMIT_CELSIUS = 5;

export type NormaliseInput = {
  readonly reference: ReferenceFunction;
  /** Emf of the sensor at the furnace's temperature, reference junction at 0 °C, µV. */
  readonly microvolt: number;
  readonly furnaceCelsius: number;
  readonly nominalCelsius: number;
  readonly limitCelsius: number;
};

export type Normalised = {
  /** E at the nominal, the second-order term included, µV. */
  readonly microvolt: number;
  /** Nominal minus furnace, °C. */
  readonly carriedCelsius: number;
  /** S(t_n)·(t_n − t), µV. */
  readonly firstOrderMicrovolt: number;
  /** −½·S′(t_n)·(t_n − t)², µV: below 0.14 µV for type K at 1000 °C and 5 °C. */
  readonly secondOrderMicrovolt: number;
};

/**
 * A sensor's emf carried from the furnace's temperature to the nominal, by Taylor's series about the nominal: E(t_n) = E(t) +
 * S(t_n)·Δ − ½·S′(t_n)·Δ², Δ = t_n − t (EA-4/02 S5 has the first order: its δt_X/C_X). The sensor is taken to have the table's
 * S: an error of 1 % in S is 1 % of what is carried. µV and °C.
 * Problems: `not-finite`; `outside-range` beyond the limit (report the deviation at the furnace's temperature instead)
 * or the type's range; `not-applicable` for a limit below zero.
 */
export function normaliseToNominal(input: NormaliseInput): Outcome<Normalised> {
  const { reference, microvolt, furnaceCelsius, nominalCelsius, limitCelsius } = input;
  const carriedCelsius = nominalCelsius - furnaceCelsius;
  if (!Number.isFinite(microvolt) || !Number.isFinite(carriedCelsius)) {
    return refused("not-finite", "the emf, the furnace's temperature or the nominal is not a number");
  }
  if (!(limitCelsius >= 0)) return refused("not-applicable", `a limit of ${limitCelsius} °C`);
  if (Math.abs(carriedCelsius) > limitCelsius) {
    return refused("outside-range", `${carriedCelsius} °C to the nominal: more than ${limitCelsius} °C`);
  }
  const slope = seebeck(reference, nominalCelsius);
  if (!slope.ok) return slope;
  // S′ holds wherever S does.
  const curvature = (seebeckSlope(reference, nominalCelsius) as { readonly value: number }).value;
  const secondOrderMicrovolt = 0 - (curvature * carriedCelsius * carriedCelsius) / 2;
  return found({
    microvolt: emfAtNominal(microvolt, carriedCelsius, slope.value) + secondOrderMicrovolt,
    carriedCelsius,
    firstOrderMicrovolt: slope.value * carriedCelsius,
    secondOrderMicrovolt,
  });
}
