import { describe, expect, it } from "vitest";
import { combine } from "@/lib/metrology/uncertainty/combine";
import { coverageFactor } from "@/lib/metrology/uncertainty/coverage-factor";
import { budgetInputs } from "@/lib/metrology/uncertainty/monte-carlo/budget-inputs";
import { linearSampler } from "@/lib/metrology/uncertainty/monte-carlo/linear-sampler";
import { modelSampler } from "@/lib/metrology/uncertainty/monte-carlo/model-sampler";
import { monteCarlo } from "@/lib/metrology/uncertainty/monte-carlo/monte-carlo";
import { validateGum } from "@/lib/metrology/uncertainty/monte-carlo/validate-gum";
import { additiveModel, massCalibration } from "../../vectors/jcgm-101-remembered";
import { outcomeValue } from "../outcome-value";

const workspace = new Float64Array(1_000_000);
const options = {
  seed: 101,
  stream: 0,
  probability: 0.95,
  trials: { kind: "fixed", count: 1_000_000 },
} as const;

describe("JCGM 101:2008, 9.2, additive model", () => {
  it.each(additiveModel)("$clause", ({ shape, standards, u, high }) => {
    const lines = standards.map((effect) => ({
      effect,
      degreesOfFreedom: null,
      distribution: shape,
    }));
    const sampler = outcomeValue(linearSampler(0, budgetInputs(lines)));
    const result = outcomeValue(monteCarlo(sampler, options, workspace));
    expect(Math.abs(result.estimate)).toBeLessThan((4 * u) / 1000);
    expect(Math.abs(result.standardUncertainty - u)).toBeLessThan(u / 200);
    // Half the printed last digit and four standard deviations of the end of a million trials.
    const allowed = (high > 10 ? 0.05 : 0.005) + 4 * 0.0027 * u;
    expect(Math.abs(result.symmetric.high - high)).toBeLessThan(allowed);
    expect(Math.abs(result.symmetric.low + high)).toBeLessThan(allowed);
  });

  it("finds the GUM's interval valid for normals (9.2.2) and not where a rectangle dominates (9.2.4)", () => {
    const isValid = ({ shape, standards }: (typeof additiveModel)[number]): boolean => {
      const lines = standards.map((effect) => ({ effect, degreesOfFreedom: null, distribution: shape }));
      const result = outcomeValue(
        monteCarlo(outcomeValue(linearSampler(0, budgetInputs(lines))), options, workspace),
      );
      const { standardUncertainty } = combine(lines);
      const gum = { estimate: 0, standardUncertainty, expanded: 1.959964 * standardUncertainty };
      return outcomeValue(validateGum(gum, result.symmetric, 2)).isValid;
    };
    expect(isValid(additiveModel[0])).toBe(true);
    expect(isValid(additiveModel[2])).toBe(false);
  });
});

describe("JCGM 101:2008, 9.3, mass calibration", () => {
  const { conventional, added, airDensity, unknownDensity, referenceDensity } = massCalibration;
  const rectangle = ({ low, high }: { readonly low: number; readonly high: number }) => ({
    estimate: (low + high) / 2,
    distribution: { kind: "rectangular", halfWidth: (high - low) / 2 } as const,
  });
  const normal = (of: { readonly estimate: number; readonly standardDeviation: number }) => ({
    estimate: of.estimate,
    distribution: { kind: "normal", standardDeviation: of.standardDeviation } as const,
  });
  const sampler = outcomeValue(
    modelSampler(
      [normal(conventional), normal(added), ...[airDensity, unknownDensity, referenceDensity].map(rectangle)],
      [],
      (x) => {
        const [mass, more, air, unknown, reference] = x as unknown as [
          number,
          number,
          number,
          number,
          number,
        ];
        return (mass + more) * (1 + (air - 1.2) * (1 / unknown - 1 / reference)) - 100_000;
      },
    ),
  );

  it("has the published estimate, u and shortest interval", () => {
    const { estimate, standardUncertainty, shortest } = outcomeValue(monteCarlo(sampler, options, workspace));
    const published = massCalibration.monteCarlo;
    expect(Math.abs(estimate - published.estimate)).toBeLessThan(0.0004);
    expect(Math.abs(standardUncertainty - published.standardUncertainty)).toBeLessThan(0.0003);
    expect(Math.abs(shortest.low - published.low)).toBeLessThan(0.003);
    expect(Math.abs(shortest.high - published.high)).toBeLessThan(0.003);
  });

  it("refutes the GUM's first-order result, as table 6 says", () => {
    const { shortest } = outcomeValue(monteCarlo(sampler, options, workspace));
    const { estimate, standardUncertainty, low, high } = massCalibration.gum;
    const gum = { estimate, standardUncertainty, expanded: (high - low) / 2 };
    const validation = outcomeValue(validateGum(gum, shortest, 1));
    expect(validation).toMatchObject({ isValid: false, tolerance: 0.005 });
    expect(validation.lowDifference).toBeCloseTo(0.045, 2);
    expect(validation.highDifference).toBeCloseTo(0.043, 2);
  });
});

describe("few readings", () => {
  it("draws a line with ν as Student's t: the interval is the GUM's with t", () => {
    const lines = [{ effect: -1, degreesOfFreedom: 5, distribution: "normal" }] as const;
    const sampler = outcomeValue(linearSampler(10, budgetInputs(lines)));
    const { symmetric, estimate } = outcomeValue(
      monteCarlo(sampler, { ...options, probability: 0.9544997361036416 }, workspace),
    );
    const k = outcomeValue(coverageFactor(5));
    expect(estimate).toBeCloseTo(10, 2);
    expect(Math.abs(symmetric.high - 10 - k)).toBeLessThan(0.03);
    expect(Math.abs(10 - symmetric.low - k)).toBeLessThan(0.03);
  });
});
