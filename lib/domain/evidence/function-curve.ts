import { deviationAt } from "@/lib/metrology/deviation/deviation-at";
import type { DeviationFunction } from "@/lib/metrology/deviation/deviation-function";

export type CurvePoint = { readonly celsius: number; readonly value: number; readonly expanded: number };

const CURVE_STEPS = 60;

/** A deviation function over its range with U = k·u, in equal steps: for drawing only, µV over °C. */
export const functionCurve = (fitted: DeviationFunction, coverageFactor: number): CurvePoint[] =>
  Array.from({ length: CURVE_STEPS + 1 }, (_, index) => {
    const celsius = fitted.fromCelsius + ((fitted.toCelsius - fitted.fromCelsius) * index) / CURVE_STEPS;
    const at = deviationAt(fitted, celsius);
    return at.ok
      ? [{ celsius, value: at.value.value, expanded: coverageFactor * at.value.standardUncertainty }]
      : [];
  }).flat();
