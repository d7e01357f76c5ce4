import { describe, expect, it } from "vitest";
import type { Outcome } from "@/lib/metrology/outcome";
import { combineCorrelated } from "@/lib/metrology/uncertainty/combine-correlated";
import type { Correlation } from "@/lib/metrology/uncertainty/correlation-factor";
import { type Distribution, standardDeviation } from "@/lib/metrology/uncertainty/distribution";
import { budgetInputs } from "@/lib/metrology/uncertainty/monte-carlo/budget-inputs";
import type { MonteCarloInput } from "@/lib/metrology/uncertainty/monte-carlo/drawn-input";
import { independentInputs } from "@/lib/metrology/uncertainty/monte-carlo/independent-inputs";
import { linearSampler } from "@/lib/metrology/uncertainty/monte-carlo/linear-sampler";
import { modelSampler } from "@/lib/metrology/uncertainty/monte-carlo/model-sampler";
import { monteCarlo } from "@/lib/metrology/uncertainty/monte-carlo/monte-carlo";
import type { Sampler } from "@/lib/metrology/uncertainty/monte-carlo/sampler";
import { outcomeValue } from "../outcome-value";

const TRIALS = 200_000;
const workspace = new Float64Array(TRIALS);
const resultOf = (sampler: Sampler) =>
  outcomeValue(
    monteCarlo(
      sampler,
      { seed: 8, stream: 0, probability: 0.95, trials: { kind: "fixed", count: TRIALS } },
      workspace,
    ),
  );
const kindOf = (outcome: Outcome<unknown>): string => (outcome.ok ? "found" : outcome.problem.kind);
const input = (distribution: Distribution, sensitivity = 1): MonteCarloInput => ({
  sensitivity,
  distribution,
});
const pair = (first: number, second: number, coefficient: number): Correlation => ({
  first,
  second,
  coefficient,
});
const rectangle: Distribution = { kind: "rectangular", halfWidth: 2 };
const normal: Distribution = { kind: "normal", standardDeviation: 1 };
const student = (degreesOfFreedom: number): Distribution => ({
  kind: "student",
  scale: 1,
  degreesOfFreedom,
});

describe("draws of every distribution", () => {
  // u and the half-width of the symmetric 95 % interval in closed form, for size 2.
  it.each([
    [normal, 1.959964],
    [rectangle, 1.9],
    [{ kind: "triangular", halfWidth: 2 }, 2 * (1 - Math.sqrt(0.05))],
    [{ kind: "trapezoidal", halfWidth: 2, beta: 0.5 }, 2 * (1 - Math.sqrt(0.05 * 0.75))],
    // sin(0.95·π/2) of the half-width.
    [{ kind: "arcsine", halfWidth: 2 }, 2 * Math.sin((0.95 * Math.PI) / 2)],
    [student(9), 2.262157],
    [student(4.5), 2.658912],
  ] as const)("%j", (distribution, end) => {
    const { estimate, standardUncertainty, symmetric } = resultOf(
      outcomeValue(linearSampler(0, [input(distribution)])),
    );
    const u = standardDeviation(distribution);
    expect(Math.abs(estimate)).toBeLessThan((4 * u) / Math.sqrt(TRIALS));
    expect(Math.abs(standardUncertainty / u - 1)).toBeLessThan(0.02);
    expect(Math.abs(symmetric.high - end)).toBeLessThan(0.04);
    expect(Math.abs(symmetric.low + end)).toBeLessThan(0.04);
  });

  it("draw nothing for none and for a size of zero", () => {
    const sampler = outcomeValue(
      linearSampler(3, [input({ kind: "none" }), input(normal, 0), input({ ...rectangle, halfWidth: 0 })]),
    );
    expect(resultOf(sampler)).toMatchObject({ estimate: 3, standardUncertainty: 0 });
  });
});

describe("independentInputs", () => {
  const reduced = (inputs: readonly MonteCarloInput[], correlations: readonly Correlation[]) =>
    outcomeValue(independentInputs(inputs, correlations));

  it("takes one error in several places for one draw of its own shape", () => {
    const inputs = [input(rectangle, 3), input(rectangle, -1), input(normal, 2)];
    expect(reduced(inputs, [pair(0, 1, 1)])).toEqual([
      { shape: { kind: "rectangular" }, amount: 4 },
      { shape: { kind: "normal" }, amount: 2 },
    ]);
    expect(reduced(inputs, [pair(0, 1, -1)])[0]).toEqual({ shape: { kind: "rectangular" }, amount: 8 });
    const cancelling = [input(rectangle, 1), input(rectangle, -1)];
    expect(reduced(cancelling, [pair(1, 0, 1)])).toEqual([]);
  });

  it.each([
    ["trapezoidal", { kind: "trapezoidal", halfWidth: 1, beta: 0.3 }, { kind: "trapezoidal", beta: 0.3 }],
    ["student", student(5), { kind: "student", degreesOfFreedom: 5 }],
  ] as const)("keeps a %s shape that both have", (_, distribution, shape) => {
    const inputs = [input(distribution), input(distribution, 2)];
    expect(reduced(inputs, [pair(0, 1, 1)])).toEqual([{ shape, amount: 3 }]);
  });

  it("keeps the shape of what acts when the first is zero", () => {
    const inputs = [input({ kind: "none" }), input(rectangle, 2), input(normal, 0)];
    expect(reduced(inputs, [pair(0, 1, 1)])).toEqual([{ shape: { kind: "rectangular" }, amount: 4 }]);
    expect(reduced([input({ kind: "none" }), input(normal, 0)], [pair(0, 1, 1)])).toEqual([]);
  });

  it("draws all else as the normal or Student's t that it is together", () => {
    const together = (one: Distribution, other: Distribution, r: number) =>
      reduced([input(one, 1), input(other, -1)], [pair(0, 1, r)]);
    const [mixed] = together(rectangle, normal, 1);
    expect(mixed?.shape).toEqual({ kind: "normal" });
    expect(mixed?.amount).toBeCloseTo(2 / Math.sqrt(3) - 1, 14);
    const [partly] = together(rectangle, rectangle, 0.5);
    expect(partly?.shape).toEqual({ kind: "normal" });
    expect(partly?.amount).toBeCloseTo(Math.sqrt(4 / 3), 14);
    expect(together(student(9), student(4), 1)).toEqual([]);
    expect(together(student(9), student(4), 0)).toHaveLength(2);
    const [few] = together(student(9), student(4), 0.5);
    expect(few).toEqual({ shape: { kind: "student", degreesOfFreedom: 4 }, amount: 1 });
    const narrow = { kind: "trapezoidal", halfWidth: 1, beta: 0.2 } as const;
    const [trapezoids] = together(narrow, { ...narrow, beta: 0.8 }, 1);
    expect(trapezoids?.shape).toEqual({ kind: "normal" });
  });

  it("has the variance that the budget has", () => {
    const effects = [1.2, -0.7, 2.1, 0.4].map((effect) => ({ effect, degreesOfFreedom: null }));
    const correlations = [pair(0, 1, 0.6), pair(3, 1, -0.3), pair(0, 3, 0.2)];
    const inputs = effects.map(({ effect }) => input(normal, effect));
    const variance = reduced(inputs, correlations).reduce((sum, { amount }) => sum + amount * amount, 0);
    const { standardUncertainty } = outcomeValue(combineCorrelated(effects, correlations));
    expect(Math.sqrt(variance)).toBeCloseTo(standardUncertainty, 14);
    const drawn = resultOf(outcomeValue(linearSampler(0, inputs, correlations)));
    expect(Math.abs(drawn.standardUncertainty / standardUncertainty - 1)).toBeLessThan(0.01);
  });

  it.each([
    ["not-finite", input(normal, Number.NaN)],
    ["not-finite", input({ kind: "normal", standardDeviation: Number.POSITIVE_INFINITY })],
    ["not-finite", input({ kind: "rectangular", halfWidth: Number.NaN })],
    ["outside-range", input({ kind: "arcsine", halfWidth: -1 })],
    ["outside-range", input({ kind: "trapezoidal", halfWidth: 1, beta: 1.1 })],
    ["outside-range", input({ kind: "trapezoidal", halfWidth: 1, beta: -0.1 })],
    ["outside-range", input(student(0))],
    ["outside-range", input(student(Number.NaN))],
  ])("refuses as %s %j", (kind, one) => {
    expect(kindOf(linearSampler(0, [one]))).toBe(kind);
    expect(kindOf(modelSampler([{ estimate: 0, distribution: one.distribution }], [], () => 0))).toBe(
      Number.isNaN(one.sensitivity) ? "found" : kind,
    );
  });

  it("refuses correlations that cannot be", () => {
    expect(kindOf(linearSampler(0, [input(normal)], [pair(0, 1, 0.5)]))).toBe("outside-range");
  });
});

describe("modelSampler", () => {
  const at = (estimate: number, distribution: Distribution) => ({ estimate, distribution });

  it("gives the model its inputs, correlated as stated", () => {
    const inputs = [at(10, normal), at(-3, { kind: "normal", standardDeviation: 2 }), at(1, rectangle)];
    const correlations = [pair(0, 1, 0.8)];
    const spread = (model: (x: Float64Array) => number) =>
      resultOf(outcomeValue(modelSampler(inputs, correlations, model)));
    const sum = spread((x) => (x[0] as number) + (x[1] as number) + (x[2] as number));
    expect(Math.abs(sum.estimate - 8)).toBeLessThan(0.04);
    expect(Math.abs(sum.standardUncertainty - Math.sqrt(1 + 4 + 3.2 + 4 / 3))).toBeLessThan(0.04);
    const difference = spread((x) => (x[0] as number) - (x[1] as number));
    expect(Math.abs(difference.standardUncertainty - Math.sqrt(1 + 4 - 3.2))).toBeLessThan(0.02);
    // The mean of a product is the product of the means and the covariance 0.8·1·2.
    const product = spread((x) => (x[0] as number) * (x[1] as number));
    expect(Math.abs(product.estimate + 30 - 1.6)).toBeLessThan(0.2);
  });

  it("is the linear sampler's distribution for a linear model", () => {
    const inputs = [normal, rectangle, student(9)];
    const model = resultOf(
      outcomeValue(
        modelSampler(
          inputs.map((distribution) => at(0, distribution)),
          [],
          (x) => (x[0] as number) + 2 * (x[1] as number) - (x[2] as number),
        ),
      ),
    );
    const linear = resultOf(
      outcomeValue(linearSampler(0, [input(normal, 1), input(rectangle, 2), input(student(9), -1)])),
    );
    expect(Math.abs(model.symmetric.high - linear.symmetric.high)).toBeLessThan(0.05);
    expect(Math.abs(model.standardUncertainty - linear.standardUncertainty)).toBeLessThan(0.03);
  });

  it("refuses an estimate that is none, correlated inputs that are not normal, and a model's NaN", () => {
    const model = () => Number.NaN;
    expect(kindOf(modelSampler([at(Number.NaN, normal)], [], model))).toBe("not-finite");
    const mixed = [at(0, normal), at(0, rectangle)];
    expect(kindOf(modelSampler(mixed, [pair(0, 1, 0.5)], model))).toBe("not-applicable");
    expect(kindOf(modelSampler(mixed, [pair(0, 1, 2)], model))).toBe("outside-range");
    const sampler = outcomeValue(modelSampler(mixed, [], model));
    const options = { seed: 1, stream: 0, probability: 0.95, trials: { kind: "fixed", count: 100 } } as const;
    expect(kindOf(monteCarlo(sampler, options, workspace))).toBe("not-finite");
  });
});

describe("budgetInputs", () => {
  it("gives every line the standard uncertainty that its effect says", () => {
    const kinds = ["normal", "rectangular", "triangular", "arcsine", "none"] as const;
    const inputs = budgetInputs(
      kinds.map((distribution) => ({ effect: -2, degreesOfFreedom: null, distribution })),
    );
    const deviations = inputs.map(
      ({ sensitivity, distribution }) => sensitivity * standardDeviation(distribution),
    );
    deviations.slice(0, 4).forEach((deviation) => {
      expect(deviation).toBeCloseTo(-2, 14);
    });
    expect(Math.abs(deviations[4] as number)).toBe(0);
    expect(budgetInputs([{ effect: 3, degreesOfFreedom: 7, distribution: "normal" }])).toEqual([
      { sensitivity: 3, distribution: { kind: "student", scale: 1, degreesOfFreedom: 7 } },
    ]);
  });
});
