import { describe, expect, it } from "vitest";
import type { RandomStream } from "@/lib/metrology/number/random";
import { addDraws, planDraws } from "@/lib/metrology/uncertainty/monte-carlo/add-draws";
import type { DrawnInput } from "@/lib/metrology/uncertainty/monte-carlo/drawn-input";

/** A stream that yields these numbers of [0, 1): `uniform` reads a number's first 27 bits from the first of two words. */
function streamOf(...numbers: readonly number[]): RandomStream {
  const words = new Int32Array(2048);
  numbers.forEach((number, n) => {
    words[2 * n] = Math.floor(number * 2 ** 32);
  });
  return { state: Int32Array.of(1, 2, 3, 4), words, next: 0 };
}

const drawOf = (input: DrawnInput, ...numbers: readonly number[]): number => {
  const values = Float64Array.of(0);
  addDraws(planDraws([input]), streamOf(...numbers), values, 0, 1);
  return values[0] as number;
};

describe("addDraws from numbers that are known", () => {
  // JCGM 101:2008, 6.4.4.4: with r = 2u − 1 of each number, a·[(1 + β)/2·r₁ + (1 − β)/2·r₂].
  it("makes a trapezoid of two rectangles, with the amount's sign", () => {
    const trapezoid = (amount: number): DrawnInput => ({ shape: { kind: "trapezoidal", beta: 0.5 }, amount });
    // r = 0.5 and −0.5: 0.75·0.5 − 0.25·0.5 = 0.25.
    expect(drawOf(trapezoid(2), 0.75, 0.25)).toBe(0.5);
    expect(drawOf(trapezoid(-2), 0.75, 0.25)).toBe(-0.5);
    // r = 0.5 twice: half of the half-width.
    expect(drawOf(trapezoid(2), 0.75, 0.75)).toBe(1);
  });

  // JCGM 101:2008, 6.4.5.4: a·(r₁ + r₂)/2.
  it("makes a triangle of two equal rectangles", () => {
    const triangle: DrawnInput = { shape: { kind: "triangular" }, amount: 2 };
    expect(drawOf(triangle, 0.75, 0.75)).toBe(1);
    expect(drawOf(triangle, 0.75, 0.25)).toBe(0);
  });

  // cos 2θ of the point (r₁, r₂): 1 on the first axis, −1 on the second, 0 half-way.
  it("makes an arcsine of an angle, and passes over the centre and the circle's edge", () => {
    const arcsine: DrawnInput = { shape: { kind: "arcsine" }, amount: 3 };
    expect(drawOf(arcsine, 0.75, 0.5)).toBe(3);
    expect(drawOf(arcsine, 0.5, 0.75)).toBe(-3);
    expect(drawOf(arcsine, 0.75, 0.75)).toBe(0);
    // (0, 0) has no angle, (−1, 0) is not inside: the next two numbers count.
    expect(drawOf(arcsine, 0.5, 0.5, 0.75, 0.5)).toBe(3);
    expect(drawOf(arcsine, 0, 0.5, 0.5, 0.75)).toBe(-3);
  });

  // R. W. Bailey, Math. Comp. 62 (1994) 779, from memory: t = x·√(ν·(W^(−2/ν) − 1)/W), W = x² + y² below 1.
  it("makes Student's t of a point inside the circle, and passes over the others", () => {
    const student = (degreesOfFreedom: number): DrawnInput => ({
      shape: { kind: "student", degreesOfFreedom },
      amount: 1,
    });
    // x = 0.5, y = 0, W = 1/4: ν = 2 gives 0.5·√(2·3·4) = √6, ν = 1 gives 0.5·√(15·4) = √15.
    expect(drawOf(student(2), 0.75, 0.5)).toBeCloseTo(Math.sqrt(6), 12);
    expect(drawOf(student(1), 0.75, 0.5)).toBeCloseTo(Math.sqrt(15), 12);
    expect(drawOf(student(2), 0.25, 0.5)).toBeCloseTo(-Math.sqrt(6), 12);
    expect(drawOf(student(2), 0.5, 0.5, 0.75, 0.5)).toBeCloseTo(Math.sqrt(6), 12);
    // On the edge t would be 0.
    expect(drawOf(student(2), 0, 0.5, 0.75, 0.5)).toBeCloseTo(Math.sqrt(6), 12);
  });

  it("adds to what is there, from the first place to the one before the last", () => {
    const values = Float64Array.of(10, 20, 30);
    const plan = planDraws([{ shape: { kind: "triangular" }, amount: 2 }]);
    addDraws(plan, streamOf(0.75, 0.75, 0.75, 0.75, 0.75, 0.75), values, 1, 2);
    expect([...values]).toEqual([10, 21, 30]);
  });
});

describe("planDraws", () => {
  it("sorts by shape and plans nothing for an amount of zero", () => {
    const shapes = ["normal", "rectangular", "triangular", "arcsine"] as const;
    const inputs = shapes.flatMap((kind) => [0, -2].map((amount) => ({ shape: { kind }, amount })));
    const { normals, rectangles, others } = planDraws(inputs);
    expect([...normals]).toEqual([-2]);
    expect([...rectangles]).toEqual([-2]);
    expect(others).toEqual([
      { shape: { kind: "triangular" }, amount: -2 },
      { shape: { kind: "arcsine" }, amount: -2 },
    ]);
  });
});
