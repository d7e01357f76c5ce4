import { describe, expect, it } from "vitest";
import type { DegreeRule } from "@/lib/metrology/deviation/choose-degree";
import { deviationAt } from "@/lib/metrology/deviation/deviation-at";
import { type DeviationFitInput, fitDeviation } from "@/lib/metrology/deviation/fit-deviation";
import { pointCovariance } from "@/lib/metrology/deviation/point-covariance";
import { problemOf, resultOf } from "../result-of";

const temperatures = [200, 400, 600, 800, 1000, 1200];
const noise = [0.11, -0.14, 0.05, 0.09, -0.13, 0.04];

/** Independent points of one own uncertainty, along a curve, with a scatter of the test's own. */
function input(
  curve: (t: number) => number,
  change: Partial<DeviationFitInput> = {},
  own = 0.1,
): DeviationFitInput {
  return {
    quantity: "emf",
    points: temperatures.map((celsius, i) => ({ celsius, value: curve(celsius) + (noise[i] ?? 0), own })),
    covariance: temperatures.map((_, i) => temperatures.map((__, j) => (i === j ? own * own : 0))),
    isThroughZero: true,
    degreeRule: { kind: "f-test", maximumDegree: 3, probability: 0.95 },
    uncertaintyMethod: "propagated",
    scatter: "as-stated",
    allowBelow: null,
    ...change,
  };
}

const line = (t: number): number => 0.01 * t;
const parabola = (t: number): number => 0.01 * t - 2e-5 * t * t;
const cubic = (t: number): number => 0.01 * t - 4e-5 * t * t + 3e-8 * t * t * t;

describe("the degree of a deviation function", () => {
  it.each([
    ["a line", line, 1],
    ["a parabola", parabola, 2],
    ["a cubic", cubic, 3],
  ])("is found by the F-test for %s", (_, curve, degree) => {
    const fitted = resultOf(fitDeviation(input(curve)));
    expect(fitted.degree).toBe(degree);
    expect(fitted.coefficients).toHaveLength(degree + 1);
    expect(fitted.isDegreeRuleMet).toBe(true);
    expect(fitted.degreesTried.map((tried) => [tried.degree, tried.isChosen])).toEqual(
      [1, 2, 3].map((d) => [d, d === degree]),
    );
  });

  it("shows F and what it had to exceed: t² of Student's, as the last term alone is tested", () => {
    const [first, second] = resultOf(fitDeviation(input(parabola))).degreesTried;
    expect(first).toMatchObject({ f: null, criticalF: null, degreesOfFreedom: 5 });
    // F(0.95; 1, 4) = 7.71 = 2.776².
    expect(second?.criticalF).toBeCloseTo(7.709, 2);
    expect(second?.f).toBeGreaterThan(7.709);
  });

  it("takes values on the curve to the last bit without testing their rounding", () => {
    const points = temperatures.map((celsius) => ({ celsius, value: 0.25 * celsius, own: 0.1 }));
    expect(resultOf(fitDeviation(input(line, { points }))).degree).toBe(1);
  });

  it("is the lowest whose residuals stay within the points' own uncertainties, by that rule", () => {
    const rule: DegreeRule = { kind: "residuals", maximumDegree: 3, limit: 2 };
    expect(resultOf(fitDeviation(input(parabola, { degreeRule: rule }))).degree).toBe(2);
    const tooTight = resultOf(fitDeviation(input(parabola, { degreeRule: { ...rule, limit: 0.01 } })));
    expect(tooTight).toMatchObject({ degree: 3, isDegreeRuleMet: false });
  });

  it("begins at a constant where the function need not pass through zero", () => {
    const points = temperatures.map((celsius, i) => ({ celsius, value: 3 + (noise[i] ?? 0), own: 0.1 }));
    const fitted = resultOf(fitDeviation(input(line, { points, isThroughZero: false })));
    expect(fitted.degree).toBe(0);
    expect(resultOf(deviationAt(fitted, 700)).standardUncertainty).toBeCloseTo(0.1 / Math.sqrt(6), 12);
  });

  it("asks for two more temperatures than its degree, and takes setpoints visited twice as one", () => {
    const three = input(line).points.slice(0, 3);
    const covariance = [0, 1, 2].map((i) => [0, 1, 2].map((j) => (i === j ? 0.01 : 0)));
    const lowered = resultOf(fitDeviation(input(line, { points: three, covariance })));
    expect(lowered.degreesTried).toHaveLength(1);
    const fixed: Partial<DeviationFitInput> = {
      points: three,
      covariance,
      degreeRule: { kind: "fixed", degree: 2 },
    };
    expect(problemOf(fitDeviation(input(line, fixed)))).toBe("too-few");
    const twice = temperatures.map((_, i) => ({ celsius: i < 3 ? 200 + i : 900 + i, value: 1, own: 0.1 }));
    expect(
      problemOf(fitDeviation(input(line, { points: twice, degreeRule: { kind: "fixed", degree: 1 } }))),
    ).toBe("too-few");
    expect(problemOf(fitDeviation(input(line, { points: twice })))).toBe("too-few");
  });

  it.each<[DegreeRule]>([
    [{ kind: "fixed", degree: 0 }],
    [{ kind: "fixed", degree: 1.5 }],
    [{ kind: "f-test", maximumDegree: 7, probability: 0.95 }],
    [{ kind: "f-test", maximumDegree: 2, probability: 1 }],
    [{ kind: "f-test", maximumDegree: 2, probability: 0 }],
  ])("refuses %j", (degreeRule) => {
    expect(problemOf(fitDeviation(input(line, { degreeRule })))).toBe("not-applicable");
  });

  it("refuses temperatures that cannot tell its terms apart", () => {
    const far = temperatures.map((t) => ({ celsius: 1e13 + t, value: 1, own: 0.1 }));
    expect(problemOf(fitDeviation(input(line, { points: far, isThroughZero: false })))).toBe("no-solution");
  });
});

describe("fitDeviation", () => {
  it("enlarges the points' own parts when they scatter more than they say, and only then when asked so", () => {
    const wide = resultOf(fitDeviation(input(parabola, { scatter: "larger" }, 0.01)));
    expect(wide.scatterFactor).toBeGreaterThan(5);
    const narrow = resultOf(fitDeviation(input(parabola, { scatter: "larger" }, 5)));
    expect(narrow.scatterFactor).toBe(1);
    const shown = resultOf(fitDeviation(input(parabola, { scatter: "from-residuals" }, 5)));
    expect(shown.scatterFactor).toBeLessThan(0.1);
    // What the scatter shows does not depend on what was stated.
    const u = (fitted: typeof wide): number => resultOf(deviationAt(fitted, 700)).standardUncertainty;
    expect(u(shown)).toBeCloseTo(u(wide), 12);
    expect(u(narrow)).toBeGreaterThan(10 * u(shown));
  });

  it("is sound to 1200 °C: the third degree reproduces a cubic to the last digits", () => {
    const exact = temperatures.map((celsius) => ({ celsius, value: cubic(celsius), own: 0.1 }));
    const fitted = resultOf(
      fitDeviation(input(cubic, { points: exact, degreeRule: { kind: "fixed", degree: 3 } })),
    );
    for (let t = 200; t <= 1200; t += 50) {
      expect(Math.abs(resultOf(deviationAt(fitted, t)).value - cubic(t))).toBeLessThan(1e-11);
    }
    expect(fitted.chiSquare).toBeLessThan(1e-20);
  });

  it("lists each point with its residual, value = fitted + residual", () => {
    const fitted = resultOf(fitDeviation(input(parabola)));
    for (const point of fitted.points) {
      expect(point.fitted + point.residual).toBeCloseTo(point.value, 12);
      expect(point.normalisedResidual).toBeCloseTo(point.residual / 0.1, 12);
      expect(resultOf(deviationAt(fitted, point.celsius)).value).toBeCloseTo(point.fitted, 10);
    }
    expect(fitted.residualDeviation).toBeCloseTo(
      0.1 * Math.sqrt(fitted.chiSquare / fitted.degreesOfFreedom),
      12,
    );
  });

  it("does not mind the order of its points", () => {
    const there = resultOf(fitDeviation(input(parabola)));
    const back = resultOf(fitDeviation(input(parabola, { points: input(parabola).points.toReversed() })));
    expect(back.coefficients[1]).toBeCloseTo(there.coefficients[1] ?? 0, 14);
    expect([back.fromCelsius, back.toCelsius]).toEqual([200, 1200]);
  });

  it("takes the common part between the points by straight lines, the larger where a temperature comes twice", () => {
    const points = [200, 200, 700, 1200].map((celsius) => ({ celsius, value: 0, own: 0.1 }));
    const shared = [0.2, 0.3, 0.3, 0.5];
    const covariance = shared.map((a, i) => shared.map((b, j) => a * b + (i === j ? 0.01 : 0)));
    const fitted = resultOf(
      fitDeviation(
        input(line, {
          points,
          covariance,
          degreeRule: { kind: "fixed", degree: 1 },
          uncertaintyMethod: "own-plus-common",
        }),
      ),
    );
    expect(fitted.common.map(({ x }) => x)).toEqual([200, 700, 1200]);
    expect(fitted.common.map(({ y }) => y.toFixed(6))).toEqual(["0.300000", "0.300000", "0.500000"]);
    const own = resultOf(
      fitDeviation({
        ...input(line, { points, degreeRule: { kind: "fixed", degree: 1 } }),
        covariance: shared.map((_, i) => shared.map((__, j) => (i === j ? 0.01 : 0))),
      }),
    );
    const u = resultOf(deviationAt(fitted, 950)).standardUncertainty;
    const ownU = resultOf(deviationAt(own, 950)).standardUncertainty;
    expect(u).toBeCloseTo(Math.sqrt(ownU * ownU + 0.4 * 0.4), 12);
  });

  const [first, ...others] = input(line).points;
  it.each<[string, Partial<DeviationFitInput>]>([
    ["too-few", { points: [], covariance: [] }],
    ["not-applicable", { covariance: [[1]] }],
    ["not-finite", { points: [{ celsius: Number.NaN, value: 0, own: 0.1 }, ...others] }],
    ["not-finite", { points: [{ celsius: 200, value: Number.NaN, own: 0.1 }, ...others] }],
    ["not-applicable", { points: [{ celsius: 200, value: 0, own: 0 }, ...others] }],
    ["not-applicable", { points: [{ celsius: 200, value: 0, own: 0.11 }, ...others] }],
    ["not-applicable", { covariance: temperatures.map(() => []) }],
    ["outside-range", { allowBelow: { downToCelsius: 250, agreement: "none" } }],
    ["outside-range", { allowBelow: { downToCelsius: Number.NaN, agreement: "none" } }],
    [
      "no-solution",
      { covariance: temperatures.map((_, i) => temperatures.map((__, j) => (i === j ? 0.01 : 0.02))) },
    ],
    // Own parts that V does not hold apart: scaling them down leaves no covariance.
    [
      "no-solution",
      {
        covariance: temperatures.map((_, i) => temperatures.map((__, j) => (i === j ? 0.01 : 0.0099))),
        scatter: "from-residuals",
        points: temperatures.map((celsius) => ({ celsius, value: 0.01 * celsius, own: 0.1 })),
      },
    ],
  ])("is refused as %s", (kind, change) => {
    expect(first?.celsius).toBe(200);
    expect(problemOf(fitDeviation(input(line, change)))).toBe(kind);
  });
});

describe("deviationAt", () => {
  const fitted = resultOf(fitDeviation(input(parabola)));
  const agreed = resultOf(
    fitDeviation(
      input(parabola, { allowBelow: { downToCelsius: 0, agreement: "scope and customer, as ordered" } }),
    ),
  );

  it("says nothing above the highest measured point, nor below the lowest", () => {
    expect(problemOf(deviationAt(fitted, 1200.001))).toBe("outside-range");
    expect(problemOf(deviationAt(fitted, 199.999))).toBe("outside-range");
    expect(problemOf(deviationAt(fitted, Number.NaN))).toBe("not-finite");
    expect(resultOf(deviationAt(fitted, 1200)).isBelowMeasured).toBe(false);
  });

  it("goes below where that was agreed, says so, and no further; never above", () => {
    const zero = resultOf(deviationAt(agreed, 0));
    expect(zero).toMatchObject({ value: 0, standardUncertainty: 0, isBelowMeasured: true });
    const refusal = deviationAt(agreed, -1);
    expect(refusal.ok ? "" : refusal.problem.message).toContain("what was agreed");
    expect(problemOf(deviationAt(agreed, 1201))).toBe("outside-range");
  });

  it("gives the slope of the curve", () => {
    const rise = resultOf(deviationAt(fitted, 700.01)).value - resultOf(deviationAt(fitted, 699.99)).value;
    expect(resultOf(deviationAt(fitted, 700)).slope).toBeCloseTo(rise / 0.02, 8);
  });
});

describe("pointCovariance", () => {
  it("adds shared errors across points with their signs, own ones to their point alone", () => {
    const { covariance, own } = resultOf(
      pointCovariance([
        { key: "meter", isShared: true, effects: [1, -2] },
        { key: "certificate", isShared: true, effects: [3, 1] },
        { key: "repeatability", isShared: false, effects: [0.5, 0.25] },
      ]),
    );
    expect(covariance).toEqual([
      [10.25, 1],
      [1, 5.0625],
    ]);
    expect(own).toEqual([0.5, 0.25]);
  });

  it("refuses nothing, lines of two lengths, and what is no number", () => {
    expect(problemOf(pointCovariance([]))).toBe("too-few");
    expect(problemOf(pointCovariance([{ key: "a", isShared: true, effects: [] }]))).toBe("too-few");
    const a = { key: "a", isShared: true, effects: [1, 2] };
    expect(problemOf(pointCovariance([a, { key: "b", isShared: false, effects: [1] }]))).toBe(
      "not-applicable",
    );
    expect(problemOf(pointCovariance([{ ...a, effects: [1, Number.NaN] }]))).toBe("not-finite");
  });
});
