import { describe, expect, it } from "vitest";
import { coefficientCovariance, deviationAt } from "@/lib/metrology/deviation/deviation-at";
import { fitDeviation } from "@/lib/metrology/deviation/fit-deviation";
import { leastSquares } from "@/lib/metrology/number/least-squares";
import { problemOf, resultOf } from "../result-of";

/** JCGM 100:2008, table H.6: readings t in °C and observed corrections b in °C of a thermometer; t₀ = 20 °C. */
const readings: readonly (readonly [number, number])[] = [
  [21.521, -0.171],
  [22.012, -0.169],
  [22.512, -0.166],
  [23.003, -0.159],
  [23.507, -0.164],
  [23.999, -0.165],
  [24.513, -0.156],
  [25.002, -0.157],
  [25.503, -0.159],
  [26.01, -0.161],
  [26.511, -0.16],
];
const t0 = 20;

describe("GUM H.3: calibration of a thermometer", () => {
  const fit = resultOf(
    leastSquares(
      readings.map(([t]) => [1, t - t0]),
      readings.map(([, b]) => b),
      readings.map(() => 1),
    ),
  );
  const variance = fit.chiSquare / fit.degreesOfFreedom;
  const inverse = (i: number, j: number): number => fit.inverseNormal[i]?.[j] ?? Number.NaN;

  it("gives the published intercept and slope with their standard deviations (H.3.3)", () => {
    expect(fit.coefficients[0]).toBeCloseTo(-0.1712, 4);
    expect(fit.coefficients[1]).toBeCloseTo(0.00218, 5);
    expect(Math.sqrt(variance * inverse(0, 0)).toFixed(4)).toBe("0.0029");
    expect(Math.sqrt(variance * inverse(1, 1)).toFixed(5)).toBe("0.00067");
  });

  it("gives the published correlation, scatter and degrees of freedom", () => {
    expect((inverse(0, 1) / Math.sqrt(inverse(0, 0) * inverse(1, 1))).toFixed(3)).toBe("-0.930");
    expect(Math.sqrt(variance).toFixed(4)).toBe("0.0035");
    expect(fit.degreesOfFreedom).toBe(9);
  });

  it("predicts b(30 °C) = −0.1494 °C with u = 0.0041 °C, the correlation included (H.3.4)", () => {
    const g = [1, 30 - t0];
    const value = fit.coefficients.reduce((total, a, i) => total + a * (g[i] ?? 0), 0);
    const square = g.flatMap((a, i) => g.map((b, j) => a * b * inverse(i, j)));
    expect(value.toFixed(4)).toBe("-0.1494");
    expect(Math.sqrt(variance * square.reduce((a, b) => a + b)).toFixed(4)).toBe("0.0041");
    // Without the covariance it would be 0.0073: the check that none is lost.
    expect(Math.sqrt(variance * (inverse(0, 0) + 100 * inverse(1, 1))).toFixed(4)).toBe("0.0073");
  });

  it("is the same straight line as a deviation function from its residuals, and refused at 30 °C", () => {
    const line = resultOf(
      fitDeviation({
        quantity: "temperature",
        points: readings.map(([t, b]) => ({ celsius: t, value: b, own: 1 })),
        covariance: readings.map((_, i) => readings.map((__, j) => (i === j ? 1 : 0))),
        isThroughZero: false,
        degreeRule: { kind: "fixed", degree: 1 },
        uncertaintyMethod: "propagated",
        scatter: "from-residuals",
        allowBelow: { downToCelsius: 20, agreement: "the example's own t₀" },
      }),
    );
    const at20 = resultOf(deviationAt(line, 20));
    expect(at20.value.toFixed(4)).toBe("-0.1712");
    expect(at20.standardUncertainty.toFixed(4)).toBe("0.0029");
    expect(at20.isBelowMeasured).toBe(true);
    expect(line.scatterFactor.toFixed(4)).toBe("0.0035");
    expect(line.residualDeviation.toFixed(4)).toBe("0.0035");
    expect(Math.sqrt(coefficientCovariance(line)[1]?.[1] ?? 0).toFixed(5)).toBe("0.00067");
    // The example extrapolates; a deviation function of this laboratory does not.
    expect(problemOf(deviationAt(line, 30))).toBe("outside-range");
  });
});
