import { describe, expect, it } from "vitest";
import { junctionEffect, junctionSensitivity } from "@/lib/metrology/comparison/reference-junction";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import { temperature } from "@/lib/metrology/thermocouple/temperature";
import { problemOf, resultOf } from "../result-of";

const { B, K, N, R, S } = referenceFunctions;

describe("junctionEffect", () => {
  it("adds emf at the junction's own temperature, never degrees", () => {
    const at = resultOf(junctionEffect(S, { celsius: 23, blockStandard: 0.02, spreadHalfWidth: 0.05 }));
    expect(at.microvolt).toBe(resultOf(emf(S, 23)));
    const measured = resultOf(emf(S, 1000)) - at.microvolt;
    expect(resultOf(temperature(S, measured + at.microvolt))).toBeCloseTo(1000, 9);
    // Degrees added to degrees: some 10 °C wrong.
    expect(Math.abs(resultOf(temperature(S, measured)) + 23 - 1000)).toBeGreaterThan(9);
  });

  it("takes the sensitivity at the junction: S(0) is 10 % low for type S at 23 °C, 2.5 % for K", () => {
    const ratio = (type: typeof S): number =>
      resultOf(junctionEffect(type, { celsius: 23, blockStandard: 0, spreadHalfWidth: 0 }))
        .seebeckAtJunction / resultOf(seebeck(type, 0));
    expect(1 / ratio(S)).toBeCloseTo(0.909, 3);
    expect(1 / ratio(K)).toBeCloseTo(0.975, 2);
  });

  it("parts what the block shares from what is the channel's own, a rectangle", () => {
    const at = resultOf(junctionEffect(K, { celsius: 0, blockStandard: 0.02, spreadHalfWidth: 0.05 }));
    expect(at.sharedMicrovolt).toBeCloseTo(0.02 * 39.45, 3);
    expect(at.ownMicrovolt).toBeCloseTo((0.05 * 39.45) / Math.sqrt(3), 3);
  });

  it("refuses a junction beyond the type's range, and uncertainties that are none", () => {
    expect(problemOf(junctionEffect(B, { celsius: -5, blockStandard: 0, spreadHalfWidth: 0 }))).toBe(
      "outside-range",
    );
    expect(problemOf(junctionEffect(K, { celsius: 0, blockStandard: -1, spreadHalfWidth: 0 }))).toBe(
      "not-applicable",
    );
    expect(problemOf(junctionEffect(K, { celsius: 0, blockStandard: 0, spreadHalfWidth: Number.NaN }))).toBe(
      "not-applicable",
    );
  });
});

describe("junctionSensitivity", () => {
  it.each([
    ["S", S, 0.468],
    ["R", R, 0.4],
    ["K", K, 1.012],
  ] as const)("S(0)/S(1000) of type %s", (_, type, expected) => {
    expect(resultOf(junctionSensitivity(type, 0, 1000))).toBeCloseTo(expected, 3);
  });

  it("of type N jumps at 0 °C, where its two polynomials join with different slopes", () => {
    expect(resultOf(junctionSensitivity(N, 1e-6, 1000))).toBeCloseTo(0.672, 3);
    expect(resultOf(junctionSensitivity(N, 0, 1000))).toBeCloseTo(0.678, 3);
  });

  it("refuses places beyond the range and the foot of type B", () => {
    expect(problemOf(junctionSensitivity(B, -1, 1000))).toBe("outside-range");
    expect(problemOf(junctionSensitivity(B, 20, 2000))).toBe("outside-range");
    expect(problemOf(junctionSensitivity(B, 20, 5))).toBe("no-solution");
  });
});
