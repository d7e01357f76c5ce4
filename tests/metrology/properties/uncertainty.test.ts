import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ConformityVerdict, decideConformity } from "@/lib/metrology/conformity/decide-conformity";
import type { ConformityRule } from "@/lib/metrology/conformity/guard-band";
import { deviationAt } from "@/lib/metrology/deviation/deviation-at";
import { fitDeviation } from "@/lib/metrology/deviation/fit-deviation";
import { pointCovariance } from "@/lib/metrology/deviation/point-covariance";
import { linearFit } from "@/lib/metrology/number/linear-fit";
import { normalizedError } from "@/lib/metrology/quality/normalized-error";
import { reportValue } from "@/lib/metrology/reporting/report-value";
import { combine } from "@/lib/metrology/uncertainty/combine";
import { combineCorrelated } from "@/lib/metrology/uncertainty/combine-correlated";
import { coverageFactor } from "@/lib/metrology/uncertainty/coverage-factor";
import { resultOf } from "../result-of";
import { number, seeded } from "./arbitraries";

const size = number(1e-6, 10);
const effect = fc.record({
  effect: fc.tuple(size, fc.boolean()).map(([x, isNegative]) => (isNegative ? -x : x)),
  degreesOfFreedom: fc.option(fc.integer({ min: 1, max: 100 }), { nil: null }),
});
const budget = fc.array(effect, { minLength: 1, maxLength: 12 });

const near = (one: number, other: number, relative = 1e-12): void =>
  expect(Math.abs(one - other)).toBeLessThanOrEqual(relative * Math.max(Math.abs(one), Math.abs(other)));

describe("budgets", () => {
  it("give the same bits in any order", () => {
    fc.assert(
      fc.property(budget, (lines) => {
        expect(combine([...lines].reverse())).toEqual(combine(lines));
      }),
      seeded,
    );
  });

  it("scale with their unit", () => {
    fc.assert(
      fc.property(budget, size, (lines, scale) => {
        const scaled = combine(lines.map((line) => ({ ...line, effect: line.effect * scale })));
        near(scaled.standardUncertainty, combine(lines).standardUncertainty * scale);
        near(scaled.degreesOfFreedom ?? 0, combine(lines).degreesOfFreedom ?? 0, 1e-10);
      }),
      seeded,
    );
  });

  it("add up in parts: a part may stand in for its lines", () => {
    fc.assert(
      fc.property(budget, budget, (first, second) => {
        const part = combine(first).standardUncertainty;
        const together = combine([...first, ...second]).standardUncertainty;
        const nested = combine([{ effect: part, degreesOfFreedom: null }, ...second]).standardUncertainty;
        near(together, nested);
        expect(together).toBeGreaterThanOrEqual(part);
      }),
      seeded,
    );
  });

  it("have shares that add up to one", () => {
    fc.assert(
      fc.property(budget, number(-1, 1), (lines, coefficient) => {
        const pairs = lines.length > 1 ? [{ first: 0, second: 1, coefficient }] : [];
        const { shares, standardUncertainty } = resultOf(combineCorrelated(lines, pairs));
        if (standardUncertainty > 1e-6)
          near(
            shares.reduce((a, b) => a + b, 0),
            1,
            1e-9,
          );
      }),
      seeded,
    );
  });

  it("lie between difference and sum, whatever the correlation", () => {
    fc.assert(
      fc.property(size, size, number(-1, 1), (one, other, coefficient) => {
        const lines = [one, other].map((x) => ({ effect: x, degreesOfFreedom: null }));
        const { standardUncertainty } = resultOf(
          combineCorrelated(lines, [{ first: 0, second: 1, coefficient }]),
        );
        expect(standardUncertainty).toBeLessThanOrEqual((one + other) * (1 + 1e-12));
        expect(standardUncertainty).toBeGreaterThanOrEqual(Math.abs(one - other) * (1 - 1e-9) - 1e-9);
      }),
      seeded,
    );
  });

  it("accept three correlations where their determinant allows, and only there", () => {
    fc.assert(
      fc.property(number(-1, 1), number(-1, 1), number(-1, 1), (a, b, c) => {
        const determinant = 1 + 2 * a * b * c - a * a - b * b - c * c;
        fc.pre(Math.abs(determinant) > 1e-6);
        const lines = [1, 2, 3].map((x) => ({ effect: x, degreesOfFreedom: null }));
        const outcome = combineCorrelated(lines, [
          { first: 0, second: 1, coefficient: a },
          { first: 1, second: 2, coefficient: b },
          { first: 0, second: 2, coefficient: c },
        ]);
        expect(outcome.ok).toBe(determinant > 0);
      }),
      seeded,
    );
  });

  it("have a coverage factor that falls towards 2 with more degrees of freedom", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 400 }), (nu, more) => {
        expect(resultOf(coverageFactor(nu + more))).toBeLessThanOrEqual(resultOf(coverageFactor(nu)));
        expect(resultOf(coverageFactor(nu + more))).toBeGreaterThan(2);
      }),
      seeded,
    );
  });
});

const better: readonly ConformityVerdict[] = ["fail", "conditional-fail", "conditional-pass", "pass"];
const rules: readonly ConformityRule[] = [
  { kind: "simple", largestRatio: 0.4 },
  { kind: "guarded", guardBandRatio: 1 },
  { kind: "guarded-binary", guardBandRatio: 1 },
  { kind: "target-risk", falseAcceptance: 0.02, isBinary: true },
];

describe("verdicts", () => {
  const decided = (rule: ConformityRule, errorCelsius: number, u: number) =>
    resultOf(
      decideConformity({
        ...{ rule, errorCelsius, toleranceCelsius: 2.5 },
        ...{ standardUncertaintyCelsius: u, expandedCelsius: 2 * u },
      }),
    );

  it.each(rules)("never become more favourable with more uncertainty: $kind", (rule) => {
    fc.assert(
      fc.property(number(-2.5, 2.5), number(0.01, 1.2), number(0.001, 1), (error, u, more) => {
        const [one, other] = [decided(rule, error, u), decided(rule, error, u + more)];
        // Inside the tolerance: less certain may be worse, or nothing at all, and never better.
        expect(other.probability).toBeLessThanOrEqual(one.probability + 1e-12);
        expect(other.guardBandCelsius).toBeGreaterThanOrEqual(one.guardBandCelsius);
        if (other.verdict === "pass") expect(one.verdict).toBe("pass");
        if (one.verdict !== "not-decidable" && other.verdict !== "not-decidable") {
          expect(better.indexOf(other.verdict)).toBeLessThanOrEqual(better.indexOf(one.verdict));
        }
      }),
      seeded,
    );
  });

  it.each(rules)("do not ask for the sign of the error: $kind", (rule) => {
    fc.assert(
      fc.property(number(0, 5), number(0.01, 1.2), (error, u) => {
        expect(decided(rule, -error, u).verdict).toBe(decided(rule, error, u).verdict);
      }),
      seeded,
    );
  });
});

describe("E_n", () => {
  const result = fc.record({ value: number(-1e3, 1e3), uncertainty: number(1e-3, 10) });

  it("turns its sign with the two laboratories, and does not mind a common shift", () => {
    fc.assert(
      fc.property(result, result, number(-0.9, 0.9), (a, b, r) => {
        const { score } = resultOf(normalizedError(a, b, r));
        near(resultOf(normalizedError(b, a, r)).score, -score);
        const moved = [a, b].map((x) => ({ ...x, value: x.value + 512 })) as [typeof a, typeof a];
        expect(Math.abs(resultOf(normalizedError(...moved, r)).score - score)).toBeLessThan(1e-8);
      }),
      seeded,
    );
  });
});

describe("fits", () => {
  const five = fc.array(number(-50, 50), { minLength: 5, maxLength: 5 });
  const celsius = [200, 400, 600, 800, 1000];

  it("of a line move and grow with their values", () => {
    fc.assert(
      fc.property(five, number(-100, 100), number(0.1, 9), (values, shift, scale) => {
        const own = resultOf(linearFit(celsius, values));
        const moved = resultOf(
          linearFit(
            celsius,
            values.map((value) => scale * value + shift),
          ),
        );
        expect(Math.abs(moved.slope - scale * own.slope)).toBeLessThan(1e-9);
      }),
      seeded,
    );
  });

  const fitted = (values: readonly number[], scale: number, order: readonly number[]) => {
    const covariance = resultOf(
      pointCovariance([
        { key: "shared", isShared: true, effects: order.map((n) => scale * (1 + n / 4)) },
        { key: "own", isShared: false, effects: order.map((n) => scale * (2 + n / 3)) },
      ]),
    );
    return resultOf(
      fitDeviation({
        quantity: "emf",
        points: order.map((n, at) => ({
          celsius: celsius[n] as number,
          value: values[n] as number,
          own: covariance.own[at] as number,
        })),
        covariance: covariance.covariance,
        isThroughZero: false,
        degreeRule: { kind: "fixed", degree: 2 },
        uncertaintyMethod: "propagated",
        scatter: "as-stated",
        allowBelow: null,
      }),
    );
  };

  it("of a deviation do not depend on the order of the points, and scale with their unit", () => {
    fc.assert(
      fc.property(five, number(0.1, 9), number(200, 1000), (values, scale, t) => {
        const one = resultOf(deviationAt(fitted(values, 1, [0, 1, 2, 3, 4]), t));
        const other = resultOf(deviationAt(fitted(values, 1, [3, 0, 4, 2, 1]), t));
        expect(Math.abs(one.value - other.value)).toBeLessThan(1e-10);
        near(one.standardUncertainty, other.standardUncertainty, 1e-10);
        const scaled = fitted(
          values.map((value) => value * scale),
          scale,
          [0, 1, 2, 3, 4],
        );
        const larger = resultOf(deviationAt(scaled, t));
        expect(Math.abs(larger.value - scale * one.value)).toBeLessThan(1e-9);
        near(larger.standardUncertainty, scale * one.standardUncertainty, 1e-10);
      }),
      seeded,
    );
  });
});

describe("reports", () => {
  const digits = fc.constantFrom(1 as const, 2 as const);

  it("rounded again are what they were", () => {
    fc.assert(
      fc.property(number(-2000, 2000), number(1e-4, 50), digits, (value, expanded, kept) => {
        const once = resultOf(reportValue(value, expanded, kept));
        const again = resultOf(reportValue(plain(once.value), plain(once.expanded), kept));
        // 0.96 to one digit becomes 1.0 and then 1: one rounding of the uncertainty may end a decade up.
        if (again.decimals === once.decimals) expect(again).toEqual(once);
        else expect(plain(again.expanded)).toBe(plain(once.expanded));
      }),
      seeded,
    );
  });

  it("are never off by more than half the last digit", () => {
    fc.assert(
      fc.property(number(-2000, 2000), number(1e-4, 50), digits, (value, expanded, kept) => {
        const { value: printed, decimals } = resultOf(reportValue(value, expanded, kept));
        let half = 0.5;
        for (let n = 0; n < decimals; n += 1) half /= 10;
        for (let n = 0; n > decimals; n -= 1) half *= 10;
        expect(Math.abs(plain(printed) - value)).toBeLessThanOrEqual(half * (1 + 1e-9));
      }),
      seeded,
    );
  });
});

/** The number that a printed text stands for: it may be set with a minus sign and thin spaces. */
function plain(text: string): number {
  return Number(text.replaceAll("−", "-").replaceAll(/\s/g, ""));
}
