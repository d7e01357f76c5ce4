import { describe, expect, it } from "vitest";
import type { Outcome } from "@/lib/metrology/outcome";
import type { Distribution } from "@/lib/metrology/uncertainty/distribution";
import { coverageByMonteCarlo } from "@/lib/metrology/uncertainty/monte-carlo/coverage-by-monte-carlo";
import { drawnInput } from "@/lib/metrology/uncertainty/monte-carlo/drawn-input";
import { linearSampler } from "@/lib/metrology/uncertainty/monte-carlo/linear-sampler";
import { modelSampler } from "@/lib/metrology/uncertainty/monte-carlo/model-sampler";
import { monteCarlo, type Trials } from "@/lib/metrology/uncertainty/monte-carlo/monte-carlo";
import { numericalTolerance } from "@/lib/metrology/uncertainty/monte-carlo/numerical-tolerance";
import { summarize } from "@/lib/metrology/uncertainty/monte-carlo/summarize";
import { outcomeValue } from "../outcome-value";

/** A refusal names its kind, and in words for a person what was wrong: each of these must be in them. */
function expectRefusal(outcome: Outcome<unknown>, kind: string, ...words: readonly string[]): void {
  expect(outcome.ok ? "found" : outcome.problem.kind).toBe(kind);
  if (outcome.ok) return;
  for (const word of words) expect(outcome.problem.message).toContain(word);
}

const normal: Distribution = { kind: "normal", standardDeviation: 1 };
const sampler = outcomeValue(linearSampler(0, [{ sensitivity: 1, distribution: normal }]));
const run = (trials: Trials, room: number) =>
  monteCarlo(sampler, { seed: 1, stream: 0, probability: 0.95, trials }, new Float64Array(room));

describe("a refusal says what was wrong, with the number", () => {
  it("of an input", () => {
    const of = (distribution: Distribution, sensitivity = 1) => drawnInput({ sensitivity, distribution });
    expectRefusal(of(normal, Number.NaN), "not-finite", "Sensitivity", "NaN");
    expectRefusal(of({ kind: "arcsine", halfWidth: Number.NaN }), "not-finite", "arcsine", "NaN");
    expectRefusal(of({ kind: "triangular", halfWidth: -0.25 }), "outside-range", "triangular", "-0.25");
    expectRefusal(of({ kind: "trapezoidal", halfWidth: 1, beta: 1.5 }), "outside-range", "trapezoid", "1.5");
    expectRefusal(
      of({ kind: "student", scale: 1, degreesOfFreedom: -4 }),
      "outside-range",
      "-4",
      "degrees of freedom",
    );
  });

  it("of a model's input, by its place counted from 0", () => {
    const at = (estimate: number, distribution: Distribution) => ({ estimate, distribution });
    const model = () => 0;
    const infinite = [at(0, normal), at(Number.POSITIVE_INFINITY, normal)];
    expectRefusal(modelSampler(infinite, [], model), "not-finite", "input 1", "Infinity");
    const mixed = [at(0, normal), at(0, { kind: "rectangular", halfWidth: 1 })];
    const correlations = [{ first: 0, second: 1, coefficient: 0.5 }];
    expectRefusal(modelSampler(mixed, correlations, model), "not-applicable", "Input 1", "rectangular");
  });

  it("of a workspace", () => {
    expectRefusal(run({ kind: "fixed", count: 301 }, 300), "too-few", "301", "300");
    expectRefusal(run({ kind: "adaptive", digits: 2, divisor: 1 }, 19_999), "too-few", "19999", "10000");
  });

  it("of trials", () => {
    expectRefusal(summarize(Float64Array.of(1, 2, 3), 0.5), "outside-range", "0.5", "probability");
    expectRefusal(summarize(Float64Array.of(1, 2, 3), 0.95), "too-few", "3 trials", "0.95");
    expectRefusal(summarize(Float64Array.of(1, 2, Number.NaN), 0.6), "not-finite", "not a finite number");
  });

  it("of a standard uncertainty", () => {
    expectRefusal(numericalTolerance(Number.NaN, 1), "not-finite", "NaN");
    expectRefusal(numericalTolerance(-0.5, 1), "not-applicable", "-0.5");
    const result = outcomeValue(run({ kind: "fixed", count: 300 }, 300));
    expectRefusal(coverageByMonteCarlo(result, 0, -0.5), "not-applicable", "-0.5", "coverage factor");
  });
});
