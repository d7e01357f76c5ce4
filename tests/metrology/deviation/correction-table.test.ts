import { describe, expect, it } from "vitest";
import { correctionAt } from "@/lib/metrology/deviation/correction-at";
import { type CorrectionTableInput, correctionTable } from "@/lib/metrology/deviation/correction-table";
import { type DeviationFitInput, fitDeviation } from "@/lib/metrology/deviation/fit-deviation";
import { printedCoefficients } from "@/lib/metrology/deviation/printed-coefficients";
import { polynomial } from "@/lib/metrology/number/polynomial";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import { problemOf, resultOf } from "../result-of";

const { K, B } = referenceFunctions;
const temperatures = [300, 500, 700, 900, 1100];

const fit: DeviationFitInput = {
  quantity: "emf",
  points: temperatures.map((celsius) => ({
    celsius,
    value: 0.0123456789 * celsius + 7.654321e-5 * celsius * celsius,
    own: 2,
  })),
  covariance: temperatures.map((_, i) => temperatures.map((__, j) => (i === j ? 4 + 9 : 9))),
  isThroughZero: true,
  degreeRule: { kind: "fixed", degree: 2 },
  uncertaintyMethod: "propagated",
  scatter: "as-stated",
  allowBelow: null,
};
const deviation = resultOf(fitDeviation(fit));
const input: CorrectionTableInput = {
  deviation,
  reference: K,
  unit: "celsius",
  step: 50,
  decimals: 2,
  coverageFactor: 2,
};

describe("correctionAt", () => {
  it("turns a deviation of emf into error and correction by S(t), with the opposite sign", () => {
    const at = resultOf(correctionAt(deviation, K, 800));
    const slope = resultOf(seebeck(K, 800));
    expect(at.errorCelsius).toBeCloseTo(at.deviationMicrovolt / slope, 12);
    expect(at.deviationMicrovolt).toBeGreaterThan(0);
    expect(at.correctionCelsius).toBe(-at.errorCelsius);
  });

  it("takes a function of temperature as the error itself", () => {
    const direct = resultOf(fitDeviation({ ...fit, quantity: "temperature" }));
    const at = resultOf(correctionAt(direct, K, 800));
    expect(at.errorCelsius).toBeCloseTo(resultOf(correctionAt(deviation, K, 800)).deviationMicrovolt, 10);
    expect(at.deviationMicrovolt).toBeCloseTo(at.errorCelsius * resultOf(seebeck(K, 800)), 9);
    expect(at.standardUncertaintyCelsius).toBeGreaterThan(1);
  });

  it("refuses beyond the function and beyond the type", () => {
    expect(problemOf(correctionAt(deviation, K, 1101))).toBe("outside-range");
    const negative = { ...deviation, fromCelsius: -50 };
    expect(problemOf(correctionAt(negative, B, -20))).toBe("outside-range");
  });
});

describe("correctionTable", () => {
  it("has its rows at whole multiples of the step, both ends included, and U beside each correction", () => {
    const { rows } = resultOf(correctionTable(input));
    expect(rows.map(({ degrees }) => degrees)).toEqual(Array.from({ length: 17 }, (_, i) => 300 + 50 * i));
    for (const row of rows) {
      expect(row.celsius).toBe(row.degrees);
      expect(row.correction).toBe(row.correctionCelsius);
      expect(row.expanded).toBeCloseTo(2 * row.standardUncertaintyCelsius, 12);
      expect(Math.abs(Number(row.printedCorrection) - row.correction)).toBeLessThanOrEqual(0.005 + 1e-12);
      expect(Number(row.printedExpanded)).toBeGreaterThanOrEqual(row.expanded);
      expect(Number(row.printedExpanded)).toBeLessThan(row.expanded + 0.01);
    }
  });

  it("stands at whole °F, with corrections that are 1.8 times those in °C and no 32 in them", () => {
    const { rows } = resultOf(correctionTable({ ...input, unit: "fahrenheit", step: 100 }));
    // 300 °C is 572 °F, 1100 °C is 2012 °F.
    expect(rows[0]?.degrees).toBe(600);
    expect(rows[0]?.celsius).toBeCloseTo(315.556, 3);
    expect(rows.at(-1)?.degrees).toBe(2000);
    for (const row of rows) {
      const at = resultOf(correctionAt(deviation, K, ((row.degrees - 32) * 5) / 9));
      expect(row.correction).toBeCloseTo(1.8 * at.correctionCelsius, 12);
      expect(row.expanded).toBeCloseTo(1.8 * 2 * at.standardUncertaintyCelsius, 12);
    }
  });

  it("keeps the ends of a range that was measured at whole °F", () => {
    const points = [600, 1000, 1400, 1800].map((f) => ({
      celsius: ((f - 32) * 5) / 9,
      value: f / 100,
      own: 2,
    }));
    const covariance = points.map((_, i) => points.map((__, j) => (i === j ? 4 : 0)));
    const whole = resultOf(fitDeviation({ ...fit, points, covariance }));
    const { rows } = resultOf(correctionTable({ ...input, deviation: whole, unit: "fahrenheit", step: 200 }));
    expect(rows.map(({ degrees }) => degrees)).toEqual([600, 800, 1000, 1200, 1400, 1600, 1800]);
  });

  it.each<[string, Partial<CorrectionTableInput>]>([
    ["not-applicable", { step: 0 }],
    ["not-applicable", { step: 2.5 }],
    ["not-applicable", { decimals: -1 }],
    ["not-applicable", { decimals: 7 }],
    ["not-applicable", { decimals: 1.5 }],
    ["not-applicable", { coverageFactor: 0 }],
    ["not-applicable", { coverageFactor: Number.POSITIVE_INFINITY }],
    ["not-applicable", { deviation: { ...deviation, fromCelsius: -9000 }, step: 1 }],
    ["too-few", { step: 2000 }],
    ["outside-range", { deviation: { ...deviation, toCelsius: 1500 }, reference: K }],
  ])("is refused as %s", (kind, change) => {
    expect(problemOf(correctionTable({ ...input, ...change }))).toBe(kind);
  });
});

describe("printedCoefficients", () => {
  it.each(["celsius", "fahrenheit"] as const)(
    "give every printed row in %s again, with no digit to spare",
    (unit) => {
      const table = resultOf(correctionTable({ ...input, unit, step: 10 }));
      const { texts, significantDigits } = printedCoefficients(deviation, K, table);
      const reproduced = (digits: readonly string[]): number =>
        table.rows.filter(({ celsius, printedCorrection }) => {
          const error = polynomial(digits.map(Number), celsius) / resultOf(seebeck(K, celsius));
          const correction = -error * (unit === "celsius" ? 1 : 1.8);
          // Half the last digit and what a correction on a tie may lose to rounding.
          return Math.abs(correction - Number(printedCorrection)) <= 0.005 + 1e-9;
        }).length;
      expect(reproduced(texts)).toBe(table.rows.length);
      expect(significantDigits).toBeLessThan(8);
      const fewer = deviation.coefficients.map((a) => a.toExponential(significantDigits - 2));
      expect(reproduced(fewer)).toBeLessThan(table.rows.length);
    },
  );

  it("write all 17 digits for a table that is none of theirs", () => {
    const table = resultOf(correctionTable(input));
    const elsewhere = { ...table, rows: table.rows.map((row) => ({ ...row, celsius: 5000 })) };
    const { texts, significantDigits } = printedCoefficients(deviation, K, elsewhere);
    expect(significantDigits).toBe(17);
    expect(texts.map(Number)).toEqual(deviation.coefficients);
  });
});
