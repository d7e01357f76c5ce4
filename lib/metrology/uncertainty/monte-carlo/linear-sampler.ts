import { found, type Outcome } from "../../outcome";
import type { Correlation } from "../correlation-factor";
import { addDraws, planDraws } from "./add-draws";
import type { MonteCarloInput } from "./drawn-input";
import { independentInputs } from "./independent-inputs";
import type { Sampler } from "./sampler";

/**
 * Trials of y = estimate + Σ cᵢ·(error of xᵢ), the linear model of a budget (JCGM 101:2008, 7.3 and 7.4), with
 * correlated inputs as `independentInputs` takes them. `estimate` and every cᵢ·size in the result's unit.
 * Refuses what `independentInputs` refuses.
 */
export function linearSampler(
  estimate: number,
  inputs: readonly MonteCarloInput[],
  correlations: readonly Correlation[] = [],
): Outcome<Sampler> {
  const independent = independentInputs(inputs, correlations);
  if (!independent.ok) return independent;
  const plan = planDraws(independent.value);
  return found((stream, values, from, to) => {
    values.fill(estimate, from, to);
    addDraws(plan, stream, values, from, to);
  });
}
