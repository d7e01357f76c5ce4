import { describe, expect, it } from "vitest";
import { ReferenceFindings } from "@/lib/domain/calibration/findings";
import { referenceCorrectionOf } from "@/lib/domain/calibration/reference-correction-of";
import { certifiedRange, deviationOf } from "@/lib/domain/evidence/reference-correction";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";

/** Invented certificates: the same deviation printed in three ways must act alike. */
const whole = { kind: "reference", expanded: 0.3, coverageFactor: 2, unit: "celsius" } as const;
const deviation = (celsius: number): number => -0.0082 * celsius;
const tableAt = (celsius: number): number => {
  const value = emf(referenceFunctions.S, celsius);
  if (!value.ok) throw new Error(value.problem.message);
  return value.value;
};

describe("the deviation a reference's certificate gives", () => {
  const points = ReferenceFindings.parse({
    ...whole,
    points: [0, 1000].map((celsius) => ({ celsius, deviationMicrovolt: deviation(celsius) })),
  });
  const equation = { fromCelsius: 0, toCelsius: 1000 };
  const polynomial = ReferenceFindings.parse({
    ...whole,
    points: [],
    equation: { ...equation, kind: "polynomial", terms: [{ coefficient: 0 }, { coefficient: -0.0082 }] },
  });

  it("is the same from points and from the polynomial through them", () => {
    for (const celsius of [0, 250, 999.9, 1000]) {
      const [one, other] = [points, polynomial].map(
        (findings) => deviationOf(referenceCorrectionOf(findings), referenceFunctions.S)(celsius).value,
      );
      expect(one).toBeCloseTo(deviation(celsius), 9);
      expect(other).toBeCloseTo(deviation(celsius), 9);
    }
    expect(certifiedRange(referenceCorrectionOf(polynomial))).toMatchObject(equation);
  });

  it("is taken against the reference function where the equation gives the emf itself", () => {
    const direct = ReferenceFindings.parse({
      ...whole,
      points: [],
      equation: { ...equation, kind: "coefficients", terms: [{ coefficient: 5 }, { coefficient: 9.5 }] },
    });
    const at = deviationOf(referenceCorrectionOf(direct), referenceFunctions.S)(600);
    expect(at.value).toBeCloseTo(5 + 9.5 * 600 - tableAt(600), 9);
  });
});
