import type { StabilityCriterion } from "@/lib/metrology/stability/stability-types";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { type AgreementInput, referenceAgreement } from "./reference-agreement";

const MINIMUM_SECONDS = 600;
const NOBLE_CELSIUS = 0.1;
const BASE_CELSIUS = 0.3;

/**
 * When a furnace counts as at rest (laboratory policy): ten minutes, a drift over the window of at most
 * 0.1 °C as soon as one noble sensor is calibrated and 0.3 °C with base metal alone, references within U
 * of their difference.
 */
export function stabilityCriterion(input: AgreementInput, nominalCelsius: number): StabilityCriterion {
  const isNoble = input.sensors.some((sensor) => referenceFunctions[sensor.type].isNoble);
  return {
    minimumSeconds: MINIMUM_SECONDS,
    slopeTimesLengthCelsius: isNoble ? NOBLE_CELSIUS : BASE_CELSIUS,
    agreementCelsius: referenceAgreement(input, nominalCelsius),
  };
}
