import { found, type Outcome, refused } from "../../outcome";
import { type Correlation, type CorrelationFactor, correlationFactor } from "../correlation-factor";
import type { Distribution } from "../distribution";
import { addDraws, type DrawPlan, planDraws } from "./add-draws";
import { type DrawnInput, drawnInput } from "./drawn-input";
import { CHUNK, type Sampler } from "./sampler";

/** An input of a model of any form: its best estimate and the distribution of its error, both in its own unit. */
export type ModelInput = { readonly estimate: number; readonly distribution: Distribution };

/**
 * Trials of y = model(x₁ … x_N) for a model of any form (JCGM 101:2008, 7.3 and 7.4). The model gets the inputs in their
 * order, in their units, in an array that is used again for the next trial.
 *
 * Correlated inputs are normal and drawn together as estimate + σ·L·z (6.4.8.4, L·Lᵀ the correlation matrix).
 * Refuses: an estimate that is not finite ("not-finite"), a correlated input that is not normal ("not-applicable"), and
 * what `drawnInput` and `correlationFactor` refuse. A model that yields NaN is refused when its trials are summed up.
 */
export function modelSampler(
  inputs: readonly ModelInput[],
  correlations: readonly Correlation[],
  model: (inputs: Float64Array) => number,
): Outcome<Sampler> {
  const factor = correlationFactor(inputs.length, correlations);
  if (!factor.ok) return factor;
  const drawn: DrawnInput[] = [];
  for (const [place, { estimate, distribution }] of inputs.entries()) {
    if (!Number.isFinite(estimate))
      return refused("not-finite", `The estimate of input ${place} is ${estimate}.`);
    const one = drawnInput({ sensitivity: 1, distribution });
    if (!one.ok) return one;
    if (factor.value.inputs.includes(place) && one.value.shape.kind !== "normal") {
      return refused(
        "not-applicable",
        `Input ${place} is correlated, and not normal but ${distribution.kind}.`,
      );
    }
    drawn.push(one.value);
  }
  const estimates = inputs.map(({ estimate }) => estimate);
  return found(chunked(drawn, estimates, factor.value, model));
}

function chunked(
  drawn: readonly DrawnInput[],
  estimates: readonly number[],
  factor: CorrelationFactor,
  model: (inputs: Float64Array) => number,
): Sampler {
  // Correlated inputs get their draws from the deviates that they share, so that none of their own is planned.
  const plans = drawn.map((one, place) => planDraws(factor.inputs.includes(place) ? [] : [one]));
  const standard = planDraws([{ shape: { kind: "normal" }, amount: 1 }]);
  const columns = drawn.map(() => new Float64Array(CHUNK));
  const deviates = Array.from({ length: factor.rank }, () => new Float64Array(CHUNK));
  const row = new Float64Array(drawn.length);
  return (stream, values, from, to) => {
    for (let start = from; start < to; start += CHUNK) {
      const count = Math.min(CHUNK, to - start);
      for (const [place, column] of columns.entries()) {
        column.fill(estimates[place] as number);
        addDraws(plans[place] as DrawPlan, stream, column, 0, count);
      }
      for (const deviate of deviates) {
        deviate.fill(0);
        addDraws(standard, stream, deviate, 0, count);
      }
      for (const [n, place] of factor.inputs.entries()) {
        const column = columns[place] as Float64Array;
        const { amount } = drawn[place] as DrawnInput;
        for (const [k, deviate] of deviates.entries()) {
          const weight = amount * ((factor.rows[n] as Float64Array)[k] as number);
          for (let i = 0; i < count; i += 1)
            column[i] = (column[i] as number) + weight * (deviate[i] as number);
        }
      }
      for (let i = 0; i < count; i += 1) {
        for (let place = 0; place < row.length; place += 1) {
          row[place] = (columns[place] as Float64Array)[i] as number;
        }
        values[start + i] = model(row);
      }
    }
  };
}
