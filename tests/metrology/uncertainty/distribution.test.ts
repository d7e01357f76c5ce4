import { describe, expect, it } from "vitest";
import { standardDeviation } from "@/lib/metrology/uncertainty/distribution";
import { standardUncertainty } from "@/lib/metrology/uncertainty/standard-uncertainty";

describe("standardDeviation", () => {
  it.each([
    ["normal", standardDeviation({ kind: "normal", standardDeviation: 0.3 }), 0.3],
    ["rectangular", standardDeviation({ kind: "rectangular", halfWidth: 0.3 }), 0.3 / Math.sqrt(3)],
    ["triangular", standardDeviation({ kind: "triangular", halfWidth: 0.3 }), 0.3 / Math.sqrt(6)],
    ["arcsine", standardDeviation({ kind: "arcsine", halfWidth: 0.3 }), 0.3 / Math.sqrt(2)],
    ["Student", standardDeviation({ kind: "student", scale: 0.3, degreesOfFreedom: 4 }), 0.3 * Math.sqrt(2)],
    ["none", standardDeviation({ kind: "none" }), 0],
  ])("of %s", (_, actual, expected) => expect(actual).toBeCloseTo(expected, 15));

  it("of a trapezoid goes from the triangle's to the rectangle's", () => {
    const trapezoid = (beta: number) => ({ kind: "trapezoidal", halfWidth: 2, beta }) as const;
    expect(standardDeviation(trapezoid(0))).toBeCloseTo(2 / Math.sqrt(6), 14);
    expect(standardDeviation(trapezoid(1))).toBeCloseTo(2 / Math.sqrt(3), 14);
    expect(standardUncertainty(trapezoid(0.5))).toBeCloseTo(2 * Math.sqrt(1.25 / 6), 14);
  });

  // JCGM 100:2008, 4.3.9: the variance of the triangle is half that of the rectangle of the same half-width.
  it("halves the variance from rectangle to triangle", () => {
    const rectangle = standardUncertainty({ kind: "rectangular", halfWidth: 5 });
    const triangle = standardUncertainty({ kind: "triangular", halfWidth: 5 });
    expect((triangle / rectangle) ** 2).toBeCloseTo(0.5, 14);
    expect(standardUncertainty({ kind: "arcsine", halfWidth: 5 })).toBeCloseTo(3.5355339, 7);
  });

  it("has none for Student's t with two degrees of freedom or fewer", () => {
    for (const degreesOfFreedom of [1, 2]) {
      expect(standardDeviation({ kind: "student", scale: 1, degreesOfFreedom })).toBe(
        Number.POSITIVE_INFINITY,
      );
    }
    expect(standardDeviation({ kind: "student", scale: 1, degreesOfFreedom: Number.NaN })).toBeNaN();
  });
});
