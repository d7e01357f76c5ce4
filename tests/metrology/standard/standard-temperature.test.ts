import { describe, expect, it } from "vitest";
import { interpolate } from "@/lib/metrology/comparison/interpolate";
import { correctionCurve } from "@/lib/metrology/standard/correction-curve";
import type { CertificatePoint } from "@/lib/metrology/standard/standard-correction";
import { standardTemperature } from "@/lib/metrology/standard/standard-temperature";
import { emf } from "@/lib/metrology/thermocouple/emf";
import type { ReferenceFunction } from "@/lib/metrology/thermocouple/reference-function";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { resultOf } from "../result-of";

/** Invented certificates: deviations in µV at points, linear between. */
const curveOf = (reference: ReferenceFunction, points: readonly CertificatePoint[]) =>
  resultOf(
    correctionCurve(
      {
        kind: "points",
        quantity: "emf",
        points,
        between: "linear",
        singlePointReachCelsius: 5,
        interpolation: { kind: "stated", uncertainty: { kind: "zero" } },
      },
      reference,
    ),
  );

describe("standardTemperature", () => {
  it("finds the temperature a reference was at, for any deviation", () => {
    const points = [
      { celsius: 250, value: 1.2 },
      { celsius: 700, value: -3.4 },
      { celsius: 1150, value: -9.9 },
    ];
    const nodes = points.map(({ celsius: x, value: y }) => ({ x, y }));
    const curve = curveOf(referenceFunctions.S, points);
    for (let t = 260; t < 1150; t += 31.7) {
      const microvolt = resultOf(emf(referenceFunctions.S, t)) + interpolate(nodes, t).value;
      const { celsius } = resultOf(standardTemperature(curve, referenceFunctions.S, microvolt));
      expect(Math.abs(celsius - t)).toBeLessThan(1e-9);
    }
  });

  it("reads higher when the reference gives less emf than the table", () => {
    const curve = curveOf(referenceFunctions.R, [{ celsius: 1000, value: -8.75 }]);
    const microvolt = resultOf(emf(referenceFunctions.R, 1000));
    const { celsius } = resultOf(standardTemperature(curve, referenceFunctions.R, microvolt));
    expect(celsius).toBeCloseTo(1000 + 8.75 / 13.23, 2);
  });
});
