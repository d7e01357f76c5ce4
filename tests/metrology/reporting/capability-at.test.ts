import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { capabilityAt, type StatedCapability } from "@/lib/metrology/reporting/capability-at";

const at = (capability: StatedCapability, celsius: number) => {
  const outcome = capabilityAt(capability, celsius);
  return outcome.ok ? outcome.value : outcome.problem.kind;
};
const table: StatedCapability = {
  kind: "table",
  points: [
    { celsius: 0, expandedCelsius: 0.5 },
    { celsius: 600, expandedCelsius: 0.8 },
    { celsius: 1200, expandedCelsius: 2 },
  ],
};

describe("capabilityAt", () => {
  it("is the constant everywhere", () => {
    expect(at({ kind: "constant", expandedCelsius: 0.9 }, -40)).toBe(0.9);
  });

  it("follows a polynomial in t", () => {
    expect(at({ kind: "polynomial", coefficientsCelsius: [0.5, 0.001, 1e-6] }, 1000)).toBeCloseTo(2.5, 12);
  });

  it("takes the temperature's size, not its sign, in a + b·|t|", () => {
    const formula: StatedCapability = { kind: "proportional", constantCelsius: 0.4, perCelsius: 0.002 };
    expect(at(formula, 150)).toBeCloseTo(0.7, 12);
    expect(at(formula, -150)).toBeCloseTo(0.7, 12);
  });

  it("runs straight between a table's points, and no further than they reach", () => {
    expect(at(table, 0)).toBe(0.5);
    expect(at(table, 300)).toBeCloseTo(0.65, 12);
    expect(at(table, 900)).toBeCloseTo(1.4, 12);
    expect(at(table, 1200)).toBe(2);
    expect(at(table, -1)).toBe("outside-range");
    expect(at(table, 1201)).toBe("outside-range");
    expect(at({ kind: "table", points: [] }, 0)).toBe("too-few");
  });

  it("states nothing where it is not above zero, or at no temperature", () => {
    expect(at({ kind: "constant", expandedCelsius: 0 }, 20)).toBe("outside-range");
    expect(at({ kind: "constant", expandedCelsius: Number.POSITIVE_INFINITY }, 20)).toBe("outside-range");
    expect(at({ kind: "polynomial", coefficientsCelsius: [1, -0.01] }, 200)).toBe("outside-range");
    expect(at(table, Number.NaN)).toBe("not-finite");
  });

  it("never leaves the two neighbours of a table", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1200, noNaN: true }), (celsius) => {
        const value = at(table, celsius) as number;
        const [low, high] = celsius <= 600 ? [0.5, 0.8] : [0.8, 2];
        expect(value).toBeGreaterThanOrEqual(low - 1e-12);
        expect(value).toBeLessThanOrEqual(high + 1e-12);
      }),
    );
  });
});
