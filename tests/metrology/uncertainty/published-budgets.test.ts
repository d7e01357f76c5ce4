import { describe, expect, it } from "vitest";
import { combine } from "@/lib/metrology/uncertainty/combine";
import { combineCorrelated } from "@/lib/metrology/uncertainty/combine-correlated";
import { chooseCoverage, dominantPolicy } from "@/lib/metrology/uncertainty/coverage";
import { standardUncertainty } from "@/lib/metrology/uncertainty/standard-uncertainty";
import { oneRectangle, resistor, twoRectangles } from "../vectors/ea-4-02-coverage";
import { gumH2, gumH2Readings } from "../vectors/gum-h2";
import { toleranceOf } from "../vectors/published-value";
import { outcomeValue } from "./outcome-value";

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b) / values.length;
const spread = (one: readonly number[], other: readonly number[]): number =>
  mean(one.map((x, i) => (x - mean(one)) * ((other[i] as number) - mean(other)))) / (one.length - 1);

describe("JCGM 100:2008, H.2, impedance from correlated observations", () => {
  const series = [gumH2Readings.V, gumH2Readings.I, gumH2Readings.phi] as const;
  const means = series.map(mean) as [number, number, number];
  const u = series.map((values) => Math.sqrt(spread(values, values)));
  const r = (i: 0 | 1 | 2, j: 0 | 1 | 2): number =>
    spread(series[i], series[j]) / Math.sqrt(spread(series[i], series[i]) * spread(series[j], series[j]));
  const correlations = [
    { first: 0, second: 1, coefficient: r(0, 1) },
    { first: 0, second: 2, coefficient: r(0, 2) },
    { first: 1, second: 2, coefficient: r(1, 2) },
  ];
  const [v, i, phi] = means;
  const ohm = (1000 * v) / i;
  // ∂/∂V, ∂/∂I, ∂/∂φ.
  const slopes = {
    R: [(ohm * Math.cos(phi)) / v, (-ohm * Math.cos(phi)) / i, -ohm * Math.sin(phi)],
    X: [(ohm * Math.sin(phi)) / v, (-ohm * Math.sin(phi)) / i, ohm * Math.cos(phi)],
    Z: [ohm / v, -ohm / i, 0],
  };
  const uncertaintyOf = (slope: readonly number[]): number =>
    outcomeValue(
      combineCorrelated(
        slope.map((c, n) => ({ effect: c * (u[n] as number), degreesOfFreedom: 4 })),
        correlations,
      ),
    ).standardUncertainty;
  const between = (one: readonly number[], other: readonly number[]): string => {
    const [a, b] = [uncertaintyOf(one), uncertaintyOf(other)];
    const both = uncertaintyOf(one.map((c, n) => c + (other[n] as number)));
    return ((both * both - a * a - b * b) / (2 * a * b)).toFixed(3);
  };

  it("has R, X and Z with u", () => {
    const value = { R: ohm * Math.cos(phi), X: ohm * Math.sin(phi), Z: ohm };
    for (const name of ["R", "X", "Z"] as const) {
      expect(value[name].toFixed(3)).toBe(gumH2[name].printed);
      const u = gumH2[`u${name}`];
      expect(Math.abs(uncertaintyOf(slopes[name]) - Number(u.printed))).toBeLessThanOrEqual(toleranceOf(u));
    }
  });

  // r(R, X), r(R, Z), r(X, Z) of table H.4: from memory.
  it("has their correlations, and would not without those of the inputs", () => {
    expect(between(slopes.R, slopes.X)).toBe("-0.588");
    expect(between(slopes.R, slopes.Z)).toBe("-0.485");
    expect(between(slopes.X, slopes.Z)).toBe("0.993");
    const alone = combine(slopes.R.map((c, n) => ({ effect: c * (u[n] as number), degreesOfFreedom: 4 })));
    expect(alone.standardUncertainty).toBeGreaterThan(0.15);
  });
});

describe("EA-4/02, supplement", () => {
  it("S3: 10 kΩ resistor", () => {
    const effects = resistor.lines.map(({ stated }) => ({
      effect: standardUncertainty(stated),
      degreesOfFreedom: null,
    }));
    const { standardUncertainty: u } = combine(effects);
    expect(u.toFixed(2)).toBe(resistor.u);
    expect((2 * u).toFixed(0)).toBe(resistor.expanded);
  });

  const chosen = (lines: readonly { readonly distribution: string; readonly standard: number }[]) => {
    const effects = lines.map(({ distribution, standard }) => ({
      distribution,
      effect: standard,
      degreesOfFreedom: null,
    }));
    const combined = combine(effects);
    return {
      coverage: outcomeValue(chooseCoverage(effects, [], combined, dominantPolicy)),
      u: combined.standardUncertainty,
    };
  };

  it.each(oneRectangle)("$name: one dominant rectangle, k = $factor", ({ lines, u, factor, expanded }) => {
    const found = chosen(lines);
    expect(found.u.toFixed(3)).toBe(u);
    expect(found.coverage.kind).toBe("one-dominant-rectangle");
    expect(found.coverage.factor.toFixed(2)).toBe(factor);
    expect((found.coverage.factor * found.u).toFixed(2)).toBe(expanded);
  });

  it.each(twoRectangles)("$name: two dominant rectangles, k = $factor", (example) => {
    const { coverage, u } = chosen(example.lines);
    expect(u.toFixed(0)).toBe(example.u);
    expect(coverage.kind === "two-dominant-rectangles" && coverage.beta.toFixed(2)).toBe(example.beta);
    expect(coverage.factor.toFixed(2)).toBe(example.factor);
    expect(((coverage.factor * u) / example.expandedUnit).toFixed(2)).toBe(example.expanded);
  });
});
