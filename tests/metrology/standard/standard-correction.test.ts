import { describe, expect, it } from "vitest";
import { interpolate } from "@/lib/metrology/comparison/interpolate";
import { correctionCurve, correctionValue } from "@/lib/metrology/standard/correction-curve";
import { secondDifferenceBound } from "@/lib/metrology/standard/second-difference-bound";
import type { StandardCorrection } from "@/lib/metrology/standard/standard-correction";
import { standardTemperature } from "@/lib/metrology/standard/standard-temperature";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import { problemOf, resultOf } from "../result-of";

const { B, R, S } = referenceFunctions;

type Of<Kind extends StandardCorrection["kind"]> = Extract<StandardCorrection, { kind: Kind }>;

/** Invented certificates: no published one is quoted. */
const polynomialForm: Of<"polynomial"> = {
  kind: "polynomial",
  quantity: "emf",
  coefficients: [0, -2e-3, -4e-6],
  fromCelsius: 300,
  toCelsius: 1200,
  interpolation: { kind: "standard", standard: 0.4 },
};
const pointsForm: Of<"points"> = {
  kind: "points",
  quantity: "emf",
  points: [
    { celsius: 300, value: -1 },
    { celsius: 500, value: -2 },
    { celsius: 800, value: -5 },
    { celsius: 1100, value: -9 },
  ],
  between: "linear",
  singlePointReachCelsius: 0,
  interpolation: { kind: "second-differences" },
};
/** The type's own lower polynomial, 0.2 % high: a standard whose certificate gives its whole function. */
const ownPieces = S.pieces.slice(0, 2).map(({ fromCelsius, toCelsius, millivolt }) => ({
  fromCelsius,
  toCelsius,
  microvolt: millivolt.map((c) => c * 1000 * 1.002),
}));
const coefficientsForm: Of<"coefficients"> = {
  kind: "coefficients",
  pieces: ownPieces,
  interpolation: { kind: "rectangular", halfWidth: 0.3 },
};

const valueAt = (correction: StandardCorrection, t: number) =>
  resultOf(correctionValue(resultOf(correctionCurve(correction, S)), t));

const forms: readonly StandardCorrection[] = [
  polynomialForm,
  pointsForm,
  coefficientsForm,
  { ...polynomialForm, quantity: "temperature" },
  { ...pointsForm, quantity: "temperature", between: "monotone-cubic" },
];

describe("the correction of a standard", () => {
  it("as a polynomial is what the polynomial says, with the uncertainty stated for it", () => {
    expect(valueAt(polynomialForm, 1000)).toEqual({
      deviationMicrovolt: -6,
      slopeMicrovoltPerCelsius: -2e-3 - 8e-3,
      interpolationMicrovolt: 0.4,
    });
  });

  it("as points passes through them, by straight lines or by a cubic that does not overshoot", () => {
    for (const { celsius, value } of pointsForm.points) {
      expect(valueAt(pointsForm, celsius).deviationMicrovolt).toBeCloseTo(value, 12);
      expect(valueAt({ ...pointsForm, between: "monotone-cubic" }, celsius).deviationMicrovolt).toBeCloseTo(
        value,
        12,
      );
    }
    expect(valueAt(pointsForm, 650).deviationMicrovolt).toBeCloseTo(-3.5, 12);
    const smooth = valueAt({ ...pointsForm, between: "monotone-cubic" }, 650).deviationMicrovolt;
    expect(smooth).not.toBeCloseTo(-3.5, 3);
    expect(Math.abs(smooth + 3.5)).toBeLessThan(0.5);
  });

  it("as its own function is that less the table", () => {
    const at = valueAt(coefficientsForm, 900);
    expect(at.deviationMicrovolt).toBeCloseTo(0.002 * resultOf(emf(S, 900)), 8);
    expect(at.slopeMicrovoltPerCelsius).toBeCloseTo(0.002 * resultOf(seebeck(S, 900)), 10);
    expect(at.interpolationMicrovolt).toBeCloseTo(0.3 / Math.sqrt(3), 12);
    // The upper piece, beyond the join at 1064.18 °C.
    expect(valueAt(coefficientsForm, 1200).deviationMicrovolt).toBeCloseTo(0.002 * resultOf(emf(S, 1200)), 8);
  });

  it("in °C becomes emf by S(t)", () => {
    const at = valueAt({ ...polynomialForm, quantity: "temperature" }, 1000);
    expect(at.deviationMicrovolt).toBeCloseTo(-6 * resultOf(seebeck(S, 1000)), 9);
    expect(at.interpolationMicrovolt).toBeCloseTo(0.4 * resultOf(seebeck(S, 1000)), 12);
  });

  it.each(forms)("has the slope of its own values: %j", (form) => {
    for (const t of [412.3, 733.1, 1033.3]) {
      const rise = valueAt(form, t + 1e-3).deviationMicrovolt - valueAt(form, t - 1e-3).deviationMicrovolt;
      expect(valueAt(form, t).slopeMicrovoltPerCelsius).toBeCloseTo(rise / 2e-3, 5);
    }
  });

  it.each(forms)("says nothing beyond its range, where a solver may look all the same: %j", (form) => {
    const curve = resultOf(correctionCurve(form, S));
    expect(problemOf(correctionValue(curve, curve.fromCelsius - 0.01))).toBe("outside-range");
    expect(problemOf(correctionValue(curve, curve.toCelsius + 0.01))).toBe("outside-range");
    expect(problemOf(correctionValue(curve, Number.NaN))).toBe("not-finite");
    const end = curve.added(curve.toCelsius).value;
    expect(curve.added(curve.toCelsius + 40)).toEqual({ value: end, slope: 0 });
    expect(curve.added(Number.NaN).value).toBeNaN();
    expect(curve.interpolationMicrovolt(Number.NaN)).toSatisfy(
      (u: number) => Number.isNaN(u) || form.interpolation.kind !== "second-differences",
    );
  });

  it("of one point holds as far as its reach, each side", () => {
    const single: StandardCorrection = {
      ...pointsForm,
      points: [{ celsius: 1000, value: -8.75 }],
      singlePointReachCelsius: 5,
      interpolation: { kind: "stated", uncertainty: { kind: "rectangular", halfWidth: 0.3 } },
    };
    const curve = resultOf(correctionCurve(single, R));
    expect([curve.fromCelsius, curve.toCelsius]).toEqual([995, 1005]);
    expect(resultOf(correctionValue(curve, 1004)).deviationMicrovolt).toBe(-8.75);
    expect(problemOf(correctionValue(curve, 1006))).toBe("outside-range");
  });

  it.each<[string, StandardCorrection]>([
    ["too-few", { ...polynomialForm, coefficients: [] }],
    ["not-finite", { ...polynomialForm, coefficients: [Number.NaN] }],
    ["not-finite", { ...polynomialForm, toCelsius: Number.NaN }],
    ["outside-range", { ...polynomialForm, toCelsius: 300 }],
    ["not-applicable", { ...polynomialForm, interpolation: { kind: "standard", standard: -1 } }],
    ["not-applicable", { ...polynomialForm, interpolation: { kind: "standard", standard: Number.NaN } }],
    ["outside-range", { ...polynomialForm, toCelsius: 5000 }],
    ["outside-range", { ...polynomialForm, fromCelsius: -300 }],
    ["too-few", { ...coefficientsForm, pieces: [] }],
    ["outside-range", { ...coefficientsForm, pieces: ownPieces.toReversed() }],
    ["too-few", { ...pointsForm, points: [] }],
    ["not-finite", { ...pointsForm, points: [{ celsius: Number.NaN, value: 0 }] }],
    ["not-finite", { ...pointsForm, points: [{ celsius: 300, value: Number.NaN }] }],
    ["outside-range", { ...pointsForm, points: pointsForm.points.toReversed() }],
    ["not-applicable", { ...pointsForm, singlePointReachCelsius: -1 }],
    ["not-applicable", { ...pointsForm, singlePointReachCelsius: Number.POSITIVE_INFINITY }],
    ["not-applicable", { ...pointsForm, points: pointsForm.points.slice(0, 2) }],
    [
      "not-applicable",
      {
        ...pointsForm,
        interpolation: { kind: "stated", uncertainty: { kind: "rectangular", halfWidth: -1 } },
      },
    ],
  ])("is refused as %s when it cannot be used", (kind, form) => {
    expect(problemOf(correctionCurve(form, S))).toBe(kind);
  });
});

describe("secondDifferenceBound", () => {
  it("is the whole error of a straight line through a parabola", () => {
    const parabola = [300, 500, 800, 1100].map((x) => ({ x, y: 3e-5 * x * x }));
    for (const x of [350, 400, 600, 777, 1000]) {
      const error = interpolate(parabola, x).value - 3e-5 * x * x;
      expect(secondDifferenceBound(parabola, x)).toBeCloseTo(error, 9);
    }
  });

  it("bounds the error for a curve that bends more and more, from the nodes of both sides", () => {
    const cubic = [0, 100, 200, 300, 400].map((x) => ({ x, y: 1e-7 * x * x * x }));
    for (let x = 105; x < 300; x += 10) {
      const error = Math.abs(interpolate(cubic, x).value - 1e-7 * x * x * x);
      expect(secondDifferenceBound(cubic, x)).toBeGreaterThanOrEqual(error);
      expect(secondDifferenceBound(cubic, x)).toBeLessThan(2 * error + 0.02);
    }
  });

  it("is zero at the nodes and beyond them, and NaN for no place", () => {
    const nodes = [0, 1, 2].map((x) => ({ x, y: x * x }));
    for (const x of [-1, 0, 1, 2, 3]) expect(secondDifferenceBound(nodes, x)).toBe(0);
    expect(secondDifferenceBound(nodes.slice(0, 2), 0.5)).toBe(0);
    expect(secondDifferenceBound(nodes, Number.NaN)).toBeNaN();
  });
});

describe("standardTemperature", () => {
  it.each(forms)("finds the temperature that the standard was at: %j", (form) => {
    const curve = resultOf(correctionCurve(form, S));
    for (const t of [305.5, 600, 899.99, 1099.9]) {
      const microvolt = resultOf(emf(S, t)) + curve.added(t).value;
      const found = resultOf(standardTemperature(curve, S, microvolt));
      expect(Math.abs(found.celsius - t)).toBeLessThan(1e-8);
      const more = resultOf(standardTemperature(curve, S, microvolt + 0.01)).celsius;
      expect(found.seebeckMicrovoltPerCelsius).toBeCloseTo(0.01 / (more - found.celsius), 3);
      expect(found.deviationMicrovolt).toBeCloseTo(curve.added(t).value, 7);
      expect(found.interpolationCelsius).toBeCloseTo(
        curve.interpolationMicrovolt(t) / found.seebeckMicrovoltPerCelsius,
        9,
      );
    }
  });

  it("refuses an emf that lies beyond the certificate, or that the type never gives", () => {
    const curve = resultOf(correctionCurve(polynomialForm, S));
    expect(problemOf(standardTemperature(curve, S, resultOf(emf(S, 250))))).toBe("outside-range");
    expect(problemOf(standardTemperature(curve, S, 1e6))).toBe("outside-range");
    expect(problemOf(standardTemperature(resultOf(correctionCurve(polynomialForm, B)), B, Number.NaN))).toBe(
      "not-finite",
    );
  });
});
