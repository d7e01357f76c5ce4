import { leastSquares } from "@/lib/metrology/number/least-squares";
import { combineCorrelated } from "@/lib/metrology/uncertainty/combine-correlated";
import { gumH3, gumH3Readings, gumH3Remembered } from "../vectors/gum-h3";
import { checks } from "./check";
import { unwrap } from "./unwrap";

const fit = unwrap(
  leastSquares(
    gumH3Readings.map(({ t }) => [1, t - 20]),
    gumH3Readings.map(({ b }) => b),
    gumH3Readings.map(() => 1),
  ),
);
const [y1, y2] = fit.coefficients as [number, number];
const variance = fit.chiSquare / fit.degreesOfFreedom;
const inverse = (row: number, column: number) =>
  (fit.inverseNormal[row] as readonly number[])[column] as number;
const uY1 = Math.sqrt(variance * inverse(0, 0));
const uY2 = Math.sqrt(variance * inverse(1, 1));
const r = inverse(0, 1) / Math.sqrt(inverse(0, 0) * inverse(1, 1));

export const gumH3Checks = [
  ...checks(gumH3, {
    y1: () => y1,
    uY1: () => uY1,
    y2: () => y2,
    uY2: () => uY2,
    r: () => r,
    sumOfSquares: () => fit.chiSquare,
    correction: () => y1 + y2 * 10,
    // Without the correlation it would be 0.0073.
    uCorrection: () =>
      unwrap(
        combineCorrelated(
          [
            { effect: uY1, degreesOfFreedom: 9 },
            { effect: 10 * uY2, degreesOfFreedom: 9 },
          ],
          [{ first: 0, second: 1, coefficient: r }],
        ),
      ).standardUncertainty,
  }),
  ...checks(gumH3Remembered, { s: () => Math.sqrt(variance), freedom: () => fit.degreesOfFreedom }),
];
