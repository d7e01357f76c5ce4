import { describe, expect, it } from "vitest";
import {
  NORMALISATION_LIMIT_CELSIUS,
  type NormaliseInput,
  normaliseToNominal,
} from "@/lib/metrology/comparison/normalise-to-nominal";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { problemOf, resultOf } from "../result-of";

const { K, B } = referenceFunctions;

const input = (furnaceCelsius: number, change: Partial<NormaliseInput> = {}): NormaliseInput => ({
  reference: K,
  microvolt: resultOf(emf(K, furnaceCelsius)),
  furnaceCelsius,
  nominalCelsius: 1000,
  limitCelsius: NORMALISATION_LIMIT_CELSIUS,
  ...change,
});

describe("normaliseToNominal", () => {
  it.each([995, 998, 1000, 1002, 1005])(
    "carries a sensor of the table from %d °C to the table's 1000 °C",
    (t) => {
      const { microvolt } = resultOf(normaliseToNominal(input(t)));
      expect(Math.abs(microvolt - resultOf(emf(K, 1000)))).toBeLessThan(5e-4);
    },
  );

  it("states the second-order term: 0.13 µV at 5 °C, the same on both sides", () => {
    const above = resultOf(normaliseToNominal(input(1005)));
    const below = resultOf(normaliseToNominal(input(995)));
    expect(above.secondOrderMicrovolt).toBeCloseTo(0.13, 2);
    expect(below.secondOrderMicrovolt).toBeCloseTo(above.secondOrderMicrovolt, 12);
    expect(above.carriedCelsius).toBe(-5);
    expect(above.firstOrderMicrovolt).toBeLessThan(-190);
  });

  it("refuses more than the limit", () => {
    expect(problemOf(normaliseToNominal(input(1005.001)))).toBe("outside-range");
    expect(problemOf(normaliseToNominal(input(994.999)))).toBe("outside-range");
    expect(resultOf(normaliseToNominal(input(1007, { limitCelsius: 8 }))).carriedCelsius).toBe(-7);
  });

  it("refuses a nominal beyond the type, and what is no number or limit", () => {
    const beyond = input(1000, { reference: B, nominalCelsius: 1821, furnaceCelsius: 1820 });
    expect(problemOf(normaliseToNominal(beyond))).toBe("outside-range");
    expect(problemOf(normaliseToNominal(input(1000, { microvolt: Number.NaN })))).toBe("not-finite");
    expect(problemOf(normaliseToNominal(input(1000, { nominalCelsius: Number.NaN })))).toBe("not-finite");
    expect(problemOf(normaliseToNominal(input(1000, { limitCelsius: Number.NaN })))).toBe("not-applicable");
  });
});
