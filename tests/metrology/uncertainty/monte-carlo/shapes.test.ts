import { describe, expect, it } from "vitest";
import type { Distribution } from "@/lib/metrology/uncertainty/distribution";
import { budgetInputs } from "@/lib/metrology/uncertainty/monte-carlo/budget-inputs";
import { drawnInput } from "@/lib/metrology/uncertainty/monte-carlo/drawn-input";
import { independentInputs } from "@/lib/metrology/uncertainty/monte-carlo/independent-inputs";
import { outcomeValue } from "../outcome-value";

const student = (degreesOfFreedom: number, scale = 1): Distribution => ({
  kind: "student",
  scale,
  degreesOfFreedom,
});
const trapezoid = (beta: number, halfWidth = 1): Distribution => ({ kind: "trapezoidal", halfWidth, beta });

/** Two inputs, with their sensitivities, that are correlated with r. */
const together = (
  [c1, one]: readonly [number, Distribution],
  [c2, other]: readonly [number, Distribution],
  coefficient: number,
) =>
  outcomeValue(
    independentInputs(
      [
        { sensitivity: c1, distribution: one },
        { sensitivity: c2, distribution: other },
      ],
      [{ first: 0, second: 1, coefficient }],
    ),
  );

describe("fully correlated inputs (JCGM 100:2008, 5.2.2: their effects add with their signs)", () => {
  it("are one error where both are Student's t with the same ν", () => {
    // One draw, −1 − 2 times; r = −1 turns the second round.
    expect(together([-1, student(5)], [-2, student(5)], 1)).toEqual([
      { shape: { kind: "student", degreesOfFreedom: 5 }, amount: -3 },
    ]);
    expect(together([-1, student(5)], [-2, student(5)], -1)).toEqual([
      { shape: { kind: "student", degreesOfFreedom: 5 }, amount: 1 },
    ]);
  });

  it("are Student's t with the smaller ν, whichever comes first, where ν differs", () => {
    // u² = 1 + 4 + 2·1·2 = 9 (eq. 16 with r = 1).
    const few = [{ shape: { kind: "student", degreesOfFreedom: 4 }, amount: 3 }];
    expect(together([1, student(9)], [2, student(4)], 1)).toEqual(few);
    expect(together([2, student(4)], [1, student(9)], 1)).toEqual(few);
  });

  it("are Student's t where only one of them is", () => {
    const normal: Distribution = { kind: "normal", standardDeviation: 1 };
    const mixed = [{ shape: { kind: "student", degreesOfFreedom: 7 }, amount: 3 }];
    expect(together([1, normal], [2, student(7)], 1)).toEqual(mixed);
    expect(together([2, student(7)], [1, normal], 1)).toEqual(mixed);
  });

  it("are one trapezoid for one β, and normal with the same u for two", () => {
    expect(together([-1, trapezoid(0.5)], [-2, trapezoid(0.5)], 1)).toEqual([
      { shape: { kind: "trapezoidal", beta: 0.5 }, amount: -3 },
    ]);
    // a·√((1 + β²)/6) (JCGM 100:2008, 4.3.9) with β = 0 and 1: 1/√6 and 1/√3; r = 1 adds them.
    const [two] = together([1, trapezoid(0)], [1, trapezoid(1)], 1);
    expect(two?.shape).toEqual({ kind: "normal" });
    expect(two?.amount).toBeCloseTo(1 / Math.sqrt(6) + 1 / Math.sqrt(3), 14);
  });
});

describe("partly correlated trapezoids", () => {
  it("are normal with the variance of JCGM 100:2008, eq. 16", () => {
    // a = 2, β = 0.5: u² = 4·1.25/6 = 5/6 each; 5/6 + 5/6 + 2·0.5·5/6 = 2.5.
    const [one, ...others] = together([1, trapezoid(0.5, 2)], [1, trapezoid(0.5, 2)], 0.5);
    expect(one?.shape).toEqual({ kind: "normal" });
    expect(one?.amount).toBeCloseTo(Math.sqrt(2.5), 14);
    expect(others).toEqual([]);
  });
});

describe("drawnInput", () => {
  const of = (distribution: Distribution, sensitivity = -3) =>
    outcomeValue(drawnInput({ sensitivity, distribution }));

  it("takes a trapezoid from the triangle β = 0 to the rectangle β = 1 (JCGM 101:2008, 6.4.4)", () => {
    expect(of(trapezoid(0, 2))).toEqual({ shape: { kind: "trapezoidal", beta: 0 }, amount: -6 });
    expect(of(trapezoid(1, 2))).toEqual({ shape: { kind: "trapezoidal", beta: 1 }, amount: -6 });
  });

  it("takes nothing for a normal of no size", () => {
    expect(of({ kind: "none" })).toEqual({ shape: { kind: "normal" }, amount: 0 });
  });
});

describe("budgetInputs", () => {
  // u = 1 asks for half-widths of √3, √6 and √2 (JCGM 100:2008, 4.3.7 and 4.3.9; JCGM 101:2008, 6.4.6).
  it.each([
    ["rectangular", Math.sqrt(3)],
    ["triangular", Math.sqrt(6)],
    ["arcsine", Math.sqrt(2)],
  ] as const)("keeps a %s line so", (distribution, halfWidth) => {
    const [input] = budgetInputs([{ effect: -2, degreesOfFreedom: null, distribution }]);
    expect(input?.sensitivity).toBe(-2);
    expect(input?.distribution).toEqual({ kind: distribution, halfWidth: expect.closeTo(halfWidth, 14) });
  });
});
