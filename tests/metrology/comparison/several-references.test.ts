import { describe, expect, it } from "vitest";
import { gradientBetween } from "@/lib/metrology/comparison/gradient-between";
import {
  type SeveralReferencesInput,
  severalReferences,
} from "@/lib/metrology/comparison/several-references";
import { problemOf, resultOf } from "../result-of";

const two: SeveralReferencesInput = {
  readings: [
    { celsius: 1000.4, standardUncertainty: 0.2 },
    { celsius: 1000.6, standardUncertainty: 0.2 },
  ],
  correlation: [
    [1, 1],
    [1, 1],
  ],
  weighting: "equal",
  coverageFactor: 2,
  positionStandard: 0.11,
};
const independent = [
  [1, 0],
  [0, 1],
];

describe("severalReferences", () => {
  it("is no surer of two references than of one when they share their origin", () => {
    const mean = resultOf(severalReferences(two));
    expect(mean.celsius).toBeCloseTo(1000.5, 9);
    expect(mean.standardUncertainty).toBeCloseTo(0.2, 12);
    expect(resultOf(severalReferences({ ...two, correlation: independent })).standardUncertainty).toBeCloseTo(
      0.2 / Math.SQRT2,
      12,
    );
  });

  it("judges their difference by its own U: what they share has dropped out", () => {
    const shared = resultOf(severalReferences(two)).agreement;
    expect(shared?.expandedCelsius).toBeCloseTo(0.22, 12);
    expect(shared).toMatchObject({ first: 0, second: 1, agrees: true });
    const apart = { ...two, positionStandard: 0.05 };
    expect(resultOf(severalReferences(apart)).agreement?.agrees).toBe(false);
    const own = resultOf(severalReferences({ ...apart, correlation: independent })).agreement;
    expect(own?.agrees).toBe(true);
    expect(own?.expandedCelsius).toBeCloseTo(2 * Math.sqrt(0.08 + 0.0025), 12);
  });

  it("weighs by 1/u² when asked, and names the pair that is worst", () => {
    const three = resultOf(
      severalReferences({
        ...two,
        readings: [...two.readings, { celsius: 1003, standardUncertainty: 0.1 }],
        correlation: [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ],
        weighting: "inverse-variance",
      }),
    );
    expect(three.weights.map((w) => w.toFixed(4))).toEqual(["0.1667", "0.1667", "0.6667"]);
    expect(three.standardUncertainty).toBeCloseTo(1 / Math.sqrt(25 + 25 + 100), 12);
    expect(three.agreement).toMatchObject({ first: 0, second: 2, agrees: false });
  });

  it("has nothing to compare one reference with", () => {
    const one = resultOf(
      severalReferences({ ...two, readings: two.readings.slice(0, 1), correlation: [[1]] }),
    );
    expect(one.agreement).toBeNull();
  });

  it.each([
    ["too-few", { readings: [], correlation: [] }],
    ["not-finite", { readings: [{ celsius: Number.NaN, standardUncertainty: 1 }] }],
    ["not-finite", { readings: [{ celsius: 1, standardUncertainty: Number.NaN }] }],
    ["not-applicable", { readings: [{ celsius: 1, standardUncertainty: 0 }] }],
    ["not-applicable", { correlation: [[1]] }],
    ["not-applicable", { correlation: [[1], [1]] }],
    [
      "not-applicable",
      {
        correlation: [
          [1, 1.1],
          [1.1, 1],
        ],
      },
    ],
    ["not-applicable", { coverageFactor: 0 }],
    ["not-applicable", { positionStandard: -1 }],
  ])("is refused as %s", (kind, change: Partial<SeveralReferencesInput>) => {
    expect(problemOf(severalReferences({ ...two, ...change }))).toBe(kind);
  });
});

describe("gradientBetween", () => {
  const first = { millimetre: 0, celsius: 1000, standardUncertainty: 0.2 };
  const second = { millimetre: 40, celsius: 1001, standardUncertainty: 0.2 };
  const sensor = { millimetre: 10, standardMillimetre: 2 };

  it("stands on the line between two references, with its uncertainty", () => {
    const at = resultOf(gradientBetween(first, second, 0, sensor));
    expect(at.celsius).toBeCloseTo(1000.25, 9);
    expect(at.gradientCelsiusPerMillimetre).toBeCloseTo(0.025, 12);
    expect(at.placeCelsius).toBeCloseTo(0.05, 12);
    expect(at.standardUncertainty).toBeCloseTo(0.2 * Math.sqrt(0.75 * 0.75 + 0.25 * 0.25), 12);
    expect(resultOf(gradientBetween(first, second, 1, sensor)).standardUncertainty).toBeCloseTo(0.2, 12);
  });

  it("does not mind which of the two comes first", () => {
    expect(resultOf(gradientBetween(second, first, 0.3, sensor)).celsius).toBeCloseTo(1000.25, 9);
  });

  it("extrapolates to neither side", () => {
    expect(problemOf(gradientBetween(first, second, 0, { ...sensor, millimetre: -1 }))).toBe("outside-range");
    expect(problemOf(gradientBetween(first, second, 0, { ...sensor, millimetre: 41 }))).toBe("outside-range");
  });

  it("refuses one place for both, and what is no number, uncertainty or correlation", () => {
    expect(problemOf(gradientBetween(first, { ...second, millimetre: 0 }, 0, sensor))).toBe("no-solution");
    expect(problemOf(gradientBetween(first, second, 1.1, sensor))).toBe("not-applicable");
    expect(problemOf(gradientBetween(first, second, 0, { ...sensor, standardMillimetre: -1 }))).toBe(
      "not-applicable",
    );
    expect(problemOf(gradientBetween({ ...first, celsius: Number.NaN }, second, 0, sensor))).toBe(
      "not-finite",
    );
    expect(problemOf(gradientBetween(first, second, Number.NaN, sensor))).toBe("not-finite");
  });
});
