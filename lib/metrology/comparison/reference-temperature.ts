import type { Outcome } from "../outcome";
import type { ReferenceFunction } from "../thermocouple/reference-function";
import { temperature } from "../thermocouple/temperature";
import { interpolate, type TableNode } from "./interpolate";

/**
 * Temperature of a reference from its emf (reference junction at 0 °C): the t that solves
 * E_table(t) + ΔE(t) = E, with ΔE the deviation of its certificate, linear between its points and
 * constant beyond them. Temperatures are never added: a junction that is not at 0 °C is added as emf (EA-4/02 S5, its
 * t_S(V)). µV in, °C out. Problems: those of `temperature`.
 */
export function referenceTemperature(
  reference: ReferenceFunction,
  deviations: readonly TableNode[],
  microvolt: number,
): Outcome<number> {
  return temperature(reference, microvolt, (celsius) => interpolate(deviations, celsius));
}
