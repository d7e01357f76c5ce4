import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions, type ThermocoupleType } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import { temperature } from "@/lib/metrology/thermocouple/temperature";
import type { ReadingUnit } from "./survey-readings";

/** A reading in °C; a sentence where it is none. Only differences count here, so the thermocouple's own deviation does not. */
export const readingInCelsius = (
  reading: number,
  unit: ReadingUnit,
  type: ThermocoupleType,
  junctionCelsius: number,
): number | string => {
  if (unit === "celsius") return reading;
  const reference = referenceFunctions[type];
  const cold = emf(reference, junctionCelsius);
  if (!cold.ok) return `A junction at ${junctionCelsius} °C lies beyond type ${type}.`;
  const hot = temperature(reference, reading + cold.value);
  return hot.ok ? hot.value : `${reading} µV is no emf of type ${type}. Check the reading and the unit.`;
};

/** What the thermocouple makes of a °C, and of what its wires and the meter add, at a temperature. */
export const sizesAt = (
  type: ThermocoupleType,
  celsius: number,
  inhomogeneityPercent: number,
  meterMicrovolt: number,
): { readonly inhomogeneityCelsius: number; readonly meterCelsius: number } | null => {
  const slope = seebeck(referenceFunctions[type], celsius);
  const whole = emf(referenceFunctions[type], celsius);
  if (!slope.ok || !whole.ok) return null;
  return {
    inhomogeneityCelsius: ((inhomogeneityPercent / 100) * Math.abs(whole.value)) / slope.value,
    meterCelsius: meterMicrovolt / slope.value,
  };
};
