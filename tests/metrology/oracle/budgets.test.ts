import { describe, expect, it } from "vitest";
import { conformanceProbability } from "@/lib/metrology/conformity/conformance-probability";
import { normalProbability } from "@/lib/metrology/number/normal";
import { studentQuantile } from "@/lib/metrology/number/student";
import { combine } from "@/lib/metrology/uncertainty/combine";
import { combineCorrelated } from "@/lib/metrology/uncertainty/combine-correlated";
import { type Distribution, standardDeviation } from "@/lib/metrology/uncertainty/distribution";
import { resultOf } from "../result-of";
import { apart, type Big, big, integral, math, total } from "./oracle";

const EXACT = 1e-9;
const pi = math.acos(big(-1)) as Big;

/** Effects and ν as the budget of a type N sensor may have them; invented. */
const effects = [
  [0.3, null],
  [-0.173, null],
  [0.05, 12],
  [0.211, 4],
  [1e-4, 3],
  [-0.09, 27],
  [0.0371, null],
].map(([effect, degreesOfFreedom]) => ({
  effect: effect as number,
  degreesOfFreedom: degreesOfFreedom ?? null,
}));

const correlations = [
  { first: 0, second: 1, coefficient: 0.8 },
  { first: 2, second: 5, coefficient: -0.35 },
  { first: 1, second: 6, coefficient: 0.25 },
];

/** u² = eᵀRe by the library's matrices. */
const variance = (list: typeof effects, pairs: typeof correlations): Big => {
  const matrix = list.map((_, i) => list.map((__, j) => big(i === j ? 1 : 0)));
  for (const { first, second, coefficient } of pairs) {
    (matrix[first] as Big[])[second] = big(coefficient);
    (matrix[second] as Big[])[first] = big(coefficient);
  }
  const e = list.map(({ effect }) => big(effect));
  return math.multiply(math.multiply(e, matrix), e) as unknown as Big;
};

describe("budgets against an oracle of 64 digits", () => {
  it("combines uncorrelated effects and their degrees of freedom", () => {
    const squares = effects.map(({ effect }) => big(effect).pow(2));
    const all = total(squares);
    const { standardUncertainty, degreesOfFreedom } = combine(effects);
    expect(apart(standardUncertainty, all.sqrt())).toBeLessThan(EXACT);
    const parts = effects.flatMap(({ degreesOfFreedom: nu }, n) =>
      nu === null ? [] : [(squares[n] as Big).pow(2).div(nu)],
    );
    expect(apart(degreesOfFreedom as number, all.pow(2).div(total(parts)))).toBeLessThan(EXACT);
  });

  it("combines correlated effects", () => {
    const { standardUncertainty } = resultOf(combineCorrelated(effects, correlations));
    expect(apart(standardUncertainty, variance(effects, correlations).sqrt())).toBeLessThan(EXACT);
  });

  it("finds the standard deviation of each distribution, by integration over its density", () => {
    const one = big(1);
    const zero = big(0);
    const densities: readonly [Distribution, (x: Big) => Big][] = [
      [{ kind: "rectangular", halfWidth: 1 }, () => one.div(2)],
      [{ kind: "triangular", halfWidth: 1 }, (x) => one.minus(x)],
    ];
    for (const [distribution, density] of densities) {
      const square = integral((x) => x.pow(2).times(density(x)), zero, one, 4).times(2);
      expect(apart(standardDeviation(distribution), square.sqrt())).toBeLessThan(EXACT);
    }
    // The trapezoid in two pieces: its top and its slope.
    const beta = big(0.4);
    const height = one.div(beta.plus(1));
    const top = integral((x) => x.pow(2).times(height), zero, beta, 4);
    const slope = (x: Big) => height.times(one.minus(x)).div(one.minus(beta));
    const side = integral((x) => x.pow(2).times(slope(x)), beta, one, 4);
    const trapezoidal = standardDeviation({ kind: "trapezoidal", halfWidth: 1, beta: 0.4 });
    expect(apart(trapezoidal, top.plus(side).times(2).sqrt())).toBeLessThan(EXACT);
  });

  it.each([1, 2, 3, 4, 7, 9, 16, 50])("takes k from Student's t with %i degrees of freedom", (nu) => {
    // P(|T| ≤ t) = (2/√(νπ))·Γ((ν+1)/2)/Γ(ν/2)·∫₀ᵗ (1 + x²/ν)^(−(ν+1)/2) dx; with x = √ν·tan θ the power of a cosine.
    const p = 0.9544997361036416;
    const k = studentQuantile(p, nu, 2);
    const angle = math.atan(big(k).div(big(nu).sqrt())) as Big;
    const power = (theta: Big) => (math.cos(theta) as Big).pow(nu - 1);
    const whole = integral(power, big(0), pi.div(2), 7);
    const within = integral(power, big(0), angle, 7).div(whole);
    expect(apart(p, within)).toBeLessThan(EXACT);
  });

  it("knows the probability of conformity", () => {
    // Φ(b) − Φ(a) by integration of the density.
    const density = (x: Big) => math.exp(x.pow(2).div(-2)) as Big;
    const norm = pi.times(2).sqrt();
    for (const [error, u] of [
      [0, 0.7],
      [1.9, 0.7],
      [-2.6, 0.4],
      [2.1, 1.3],
    ] as const) {
      const [low, high] = [-2.5, 2.5].map((limit) => big(limit).minus(error).div(u)) as [Big, Big];
      const expected = integral(density, low, high, 8).div(norm);
      expect(apart(conformanceProbability(error, u, -2.5, 2.5), expected)).toBeLessThan(EXACT);
    }
    expect(
      apart(normalProbability(1.3) - 0.5, integral(density, big(0), big(1.3), 7).div(norm)),
    ).toBeLessThan(EXACT);
  });
});
