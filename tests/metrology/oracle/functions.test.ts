import { describe, expect, it } from "vitest";
import { coefficientCovariance, deviationAt } from "@/lib/metrology/deviation/deviation-at";
import { fitDeviation } from "@/lib/metrology/deviation/fit-deviation";
import { pointCovariance } from "@/lib/metrology/deviation/point-covariance";
import { leastSquares } from "@/lib/metrology/number/least-squares";
import { emf } from "@/lib/metrology/thermocouple/emf";
import type { Piece } from "@/lib/metrology/thermocouple/reference-function";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import { resultOf } from "../result-of";
import { apart, type Big, big, math, total } from "./oracle";

const EXACT = 1e-9;

type Matrix = Big[][];
const multiply = (a: Matrix, b: Matrix): Matrix => math.multiply(a, b) as Matrix;
const transpose = (a: Matrix): Matrix => math.transpose(a) as Matrix;
const inverse = (a: Matrix): Matrix => math.inv(a) as Matrix;
const diagonal = (values: readonly Big[]): Matrix =>
  values.map((value, i) => values.map((_, j) => (i === j ? value : big(0))));

/** Five points with the reference's error shared and their own repeatability; invented. */
const celsius = [200, 400, 600, 800, 1000];
const values = [4.1, 11.9, 15.2, 26.4, 31.7];
const { covariance, own } = resultOf(
  pointCovariance([
    { key: "reference", isShared: true, effects: celsius.map((t) => 0.9 + 0.004 * t) },
    { key: "meter", isShared: true, effects: celsius.map(() => -1.3) },
    { key: "own", isShared: false, effects: [1.1, 1.3, 1.7, 2.1, 2.9] },
  ]),
);

/** (XᵀWX)⁻¹XᵀW by the normal equations, which 64 digits can afford. */
const mapOf = (degrees: readonly number[]): { x: Matrix; map: Matrix } => {
  const x = celsius.map((t) => degrees.map((power) => big(t).pow(power)));
  const weights = diagonal(own.map((u) => big(1).div(big(u).pow(2))));
  const normal = multiply(multiply(transpose(x), weights), x);
  return { x, map: multiply(inverse(normal), multiply(transpose(x), weights)) };
};

describe.each([
  [true, [1, 2]],
  [false, [0, 1, 2]],
] as const)(
  "a deviation function against an oracle of 64 digits, through zero: %s",
  (isThroughZero, degrees) => {
    const deviation = resultOf(
      fitDeviation({
        quantity: "emf",
        points: celsius.map((t, n) => ({ celsius: t, value: values[n] as number, own: own[n] as number })),
        covariance,
        isThroughZero,
        degreeRule: { kind: "fixed", degree: 2 },
        uncertaintyMethod: "propagated",
        scatter: "as-stated",
        allowBelow: null,
      }),
    );
    const { map } = mapOf(degrees);
    const expected = multiply(
      map,
      values.map((value) => [big(value)]),
    ).map(([a]) => a as Big);
    const spread = multiply(
      multiply(
        map,
        covariance.map((row) => row.map(big)),
      ),
      transpose(map),
    );

    it("has the same coefficients", () => {
      for (const [n, power] of degrees.entries()) {
        expect(apart(deviation.coefficients[power] as number, expected[n] as Big)).toBeLessThan(EXACT);
      }
    });

    it("carries the same covariance of its coefficients", () => {
      const ours = coefficientCovariance(deviation);
      for (const [i, row] of degrees.entries()) {
        for (const [j, column] of degrees.entries()) {
          const theirs = (spread[i] as Big[])[j] as Big;
          expect(apart((ours[row] as readonly number[])[column] as number, theirs)).toBeLessThan(EXACT);
        }
      }
    });

    it("has the same value and uncertainty between the points", () => {
      for (const t of [200, 333.3, 650, 987.6]) {
        const g = degrees.map((power) => [big(t).pow(power)]);
        const at = resultOf(deviationAt(deviation, t));
        const value = total(g.map(([power], n) => (power as Big).times(expected[n] as Big)));
        expect(apart(at.value, value)).toBeLessThan(EXACT);
        const variance = multiply(multiply(transpose(g), spread), g)[0]?.[0] as Big;
        expect(apart(at.standardUncertainty, variance.sqrt())).toBeLessThan(EXACT);
      }
    });
  },
);

it("fits weighted lines and parabolas as the normal equations do", () => {
  const { x, map } = mapOf([0, 1, 2]);
  const fit = resultOf(
    leastSquares(
      x.map((row) => row.map((entry) => entry.toNumber())),
      values,
      own.map((u) => 1 / (u * u)),
    ),
  );
  const expected = multiply(
    map,
    values.map((value) => [big(value)]),
  );
  for (const [n, a] of fit.coefficients.entries())
    expect(apart(a, expected[n]?.[0] as Big)).toBeLessThan(EXACT);
});

/** The published function in 64 digits, µV, and its derivative. */
const published = (piece: Piece, t: number): { emf: Big; slope: Big } => {
  const x = big(t);
  const c = piece.millivolt.map(big);
  let value = total(c.map((a, power) => a.times(x.pow(power))));
  let slope = total(c.flatMap((a, power) => (power === 0 ? [] : [a.times(power).times(x.pow(power - 1))])));
  if (piece.gaussian) {
    const { millivolt, perSquareCelsius, centreCelsius } = piece.gaussian;
    const d = x.minus(big(centreCelsius));
    const bell = big(millivolt).times(math.exp(big(perSquareCelsius).times(d.pow(2))) as Big);
    value = value.plus(bell);
    slope = slope.plus(bell.times(big(perSquareCelsius)).times(d).times(2));
  }
  return { emf: value.times(1000), slope: slope.times(1000) };
};

describe.each(Object.entries(referenceFunctions))("the reference function of type %s", (_, reference) => {
  it("agrees with 64 digits", () => {
    for (const piece of reference.pieces) {
      const step = (piece.toCelsius - piece.fromCelsius) / 23;
      for (let n = 1; n <= 23; n += 1) {
        const t = n === 23 ? piece.toCelsius : piece.fromCelsius + n * step;
        const exact = published(piece, t);
        // Near 0 °C, and where the terms cancel, the value itself is no measure: 1e-8 µV is.
        const ours = resultOf(emf(reference, t));
        const off = big(ours).minus(exact.emf).abs().toNumber();
        expect(off).toBeLessThan(Math.max(EXACT * Math.abs(ours), 1e-8));
        const slope = resultOf(seebeck(reference, t));
        const slopeOff = big(slope).minus(exact.slope).abs().toNumber();
        expect(slopeOff).toBeLessThan(Math.max(EXACT * Math.abs(slope), 1e-8));
      }
    }
  });
});
