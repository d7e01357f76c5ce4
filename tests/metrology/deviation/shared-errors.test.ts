import { describe, expect, it } from "vitest";
import { deviationAt } from "@/lib/metrology/deviation/deviation-at";
import { type DeviationFitInput, fitDeviation } from "@/lib/metrology/deviation/fit-deviation";
import { pointCovariance } from "@/lib/metrology/deviation/point-covariance";
import { resultOf } from "../result-of";

/**
 * Five points whose errors are mostly shared: V = 0.35²·J + 0.15²·I, D(t) = a₁t + a₂t² in °C. An invented example whose
 * numbers were computed independently of this engine, right and wrong ones alike.
 */
const celsius = [300, 500, 700, 900, 1100];
const shared = 0.35;
const own = 0.15;
const at = [400, 600, 800, 1000];
const right = [0.3262, 0.3957, 0.4067, 0.3688];
const wrong = {
  "all taken as independent": [0.2211, 0.2258, 0.1968, 0.2489],
  "generalised least squares with V": [0.2627, 0.3166, 0.3241, 0.2969],
};
const alternative = [0.3607, 0.3611, 0.3585, 0.3635];

const { covariance } = resultOf(
  pointCovariance([
    { key: "reference certificate, voltmeter, junction", isShared: true, effects: celsius.map(() => shared) },
    { key: "repeatability", isShared: false, effects: celsius.map(() => own) },
  ]),
);

const input: DeviationFitInput = {
  quantity: "temperature",
  points: celsius.map((t) => ({ celsius: t, value: 0.001 * t - 4e-7 * t * t, own })),
  covariance,
  isThroughZero: true,
  degreeRule: { kind: "fixed", degree: 2 },
  uncertaintyMethod: "propagated",
  scatter: "as-stated",
  allowBelow: null,
};

const uncertainties = (change: Partial<DeviationFitInput>): number[] => {
  const fitted = resultOf(fitDeviation({ ...input, ...change }));
  return at.map((t) => resultOf(deviationAt(fitted, t)).standardUncertainty);
};

const relative = (a: readonly number[], b: readonly number[]): number[] =>
  a.map((x, i) => Math.abs(x / (b[i] as number) - 1));

describe("a deviation function whose points share an error", () => {
  it("carries the whole covariance: u at 400, 600, 800 and 1000 °C to 1 %, in fact to the digits given", () => {
    for (const off of relative(uncertainties({}), right)) expect(off).toBeLessThan(2e-4);
  });

  it.each(Object.entries(wrong))("is not what comes of it when %s", (_, values) => {
    for (const off of relative(uncertainties({}), values)) expect(off).toBeGreaterThan(0.1);
  });

  it("would give the first wrong answer only if it were told that nothing is shared", () => {
    const total = Math.sqrt(shared * shared + own * own);
    const independent = uncertainties({
      points: input.points.map((point) => ({ ...point, own: total })),
      covariance: celsius.map((_, i) => celsius.map((__, j) => (i === j ? total * total : 0))),
    });
    for (const off of relative(independent, wrong["all taken as independent"]))
      expect(off).toBeLessThan(2e-3);
  });

  it("offers the common part unreduced under its own name, with its own values", () => {
    const apart = uncertainties({ uncertaintyMethod: "own-plus-common" });
    for (const off of relative(apart, alternative)) expect(off).toBeLessThan(2e-4);
    for (const off of relative(apart, right)) expect(off).toBeGreaterThan(0.01);
  });

  it("is the spread of the curves that such errors really make", () => {
    let state = 20261125;
    const uniform = (): number => {
      state = (state * 16807) % 2147483647;
      return state / 2147483647;
    };
    // Twelve uniform numbers make a normal one near enough for a standard deviation.
    const normal = (): number => Array.from({ length: 12 }, uniform).reduce((a, b) => a + b) - 6;
    const runs = 3000;
    const squares = at.map(() => 0);
    for (let run = 0; run < runs; run += 1) {
      const common = shared * normal();
      const points = celsius.map((t) => ({ celsius: t, value: common + own * normal(), own }));
      const fitted = resultOf(fitDeviation({ ...input, points }));
      for (const [i, t] of at.entries()) {
        squares[i] = (squares[i] ?? 0) + resultOf(deviationAt(fitted, t)).value ** 2 / runs;
      }
    }
    // 3000 runs know a standard deviation to 1.3 %; the nearest wrong answer is 20 % away.
    for (const off of relative(squares.map(Math.sqrt), right)) expect(off).toBeLessThan(0.05);
  });

  it("gives back the curve that the values lie on", () => {
    const fitted = resultOf(fitDeviation(input));
    expect(fitted.coefficients[0]).toBe(0);
    expect(fitted.coefficients[1]).toBeCloseTo(0.001, 14);
    expect(fitted.coefficients[2]).toBeCloseTo(-4e-7, 16);
    expect(fitted.residualDeviation).toBeLessThan(1e-14);
    expect(fitted.degreesOfFreedom).toBe(3);
  });
});
