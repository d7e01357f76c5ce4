import { logarithm } from "../number/logarithm";
import { found, type Outcome, refused } from "../outcome";
import { type FixedPoint, type FixedPointRatios, fixedPointKelvin } from "./fixed-point";
import { ratioAndSlope } from "./its-90-ratio";
import { type SprtSection, type SprtSubrange, sprtSubranges } from "./sprt-subrange";

/**
 * Coefficients of the deviation function of one thermometer in one subrange; W(Al) as measured, where d is
 * used.
 */
export type SprtCalibration = {
  readonly subrange: SprtSubrange;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly aluminiumRatio: number;
};

/**
 * x of the deviation function: W − 1, or ln W in the subrange 3.3.1.3 (ITS-90, Metrologia 27 (1990) 3,
 * section 3.3). W and x are pure numbers. NaN for a W that is not a number, or not positive under the
 * logarithm.
 */
export function deviationVariable(subrange: SprtSubrange, ratio: number): number {
  return subrange.variable === "logarithm" ? logarithm(ratio) : ratio - 1;
}

/**
 * ΔW/(W − 1) of a fixed point against x. W_r is the reference function's own, so that the point comes back
 * exactly.
 */
function reduced(subrange: SprtSubrange, point: FixedPoint, ratio: number): { x: number; y: number } {
  const deviation = ratio - ratioAndSlope(fixedPointKelvin[point]).value;
  return { x: deviationVariable(subrange, ratio), y: deviation / (ratio - 1) };
}

type Terms = { readonly a: number; readonly b: number; readonly c: number };

/**
 * a + b·x + c·x² through one, two or three points, by Newton's divided differences; fewer points, fewer
 * terms.
 */
function interpolate(points: readonly { readonly x: number; readonly y: number }[]): Terms {
  const [first, second, third] = points as [(typeof points)[number], ...typeof points];
  if (!second) return { a: first.y, b: 0, c: 0 };
  const slope = (second.y - first.y) / (second.x - first.x);
  if (!third) return { a: first.y - slope * first.x, b: slope, c: 0 };
  const next = (third.y - second.y) / (third.x - second.x);
  const c = (next - slope) / (third.x - first.x);
  const b = slope - c * (first.x + second.x);
  return { a: first.y - first.x * (b + c * first.x), b, c };
}

/**
 * The deviation function of a standard platinum resistance thermometer from W = R(T)/R(273.16 K) measured at
 * the fixed points of the subrange (pure numbers): ITS-90, H. Preston-Thomas, Metrologia 27 (1990) 3, section
 * 3.3. Through each point exactly, as the scale defines it; points that the subrange does not use are
 * ignored.
 * Problems: `too-few` with the points that are missing; `not-finite` for a ratio that is not a positive
 * number; `no-solution` when two ratios are equal or one is 1.
 */
export function sprtCalibration(section: SprtSection, ratios: FixedPointRatios): Outcome<SprtCalibration> {
  const subrange: SprtSubrange = sprtSubranges[section];
  const needed: readonly FixedPoint[] = subrange.hasSilver ? [...subrange.points, "Ag"] : subrange.points;
  const missing = needed.filter((point) => ratios[point] === undefined);
  if (missing.length > 0) {
    return refused("too-few", `subrange ${section} of the ITS-90 also needs W at ${missing.join(", ")}`);
  }
  const value = (point: FixedPoint): number => ratios[point] as number;
  const bad = needed.find((point) => !(Number.isFinite(value(point)) && value(point) > 0));
  if (bad) return refused("not-finite", `W(${bad}) = ${value(bad)} is not a resistance ratio`);
  const terms = interpolate(subrange.points.map((point) => reduced(subrange, point, value(point))));
  const base = { subrange, ...terms, d: 0, aluminiumRatio: Number.NaN };
  const calibration = subrange.hasSilver ? withSilver(base, value("Al"), value("Ag")) : base;
  const { a, b, c, d } = calibration;
  if (!Number.isFinite(a + b + c + d)) {
    return refused("no-solution", `subrange ${section}: the ratios at ${needed.join(", ")} give no function`);
  }
  return found(calibration);
}

/** Adds d, from what the function without it leaves at the silver point. */
function withSilver(
  calibration: SprtCalibration,
  aluminiumRatio: number,
  silverRatio: number,
): SprtCalibration {
  const { x, y } = reduced(calibration.subrange, "Ag", silverRatio);
  const { a, b, c } = calibration;
  const rest = (y - (a + x * (b + x * c))) * (silverRatio - 1);
  const above = silverRatio - aluminiumRatio;
  return { ...calibration, aluminiumRatio, d: rest / (above * above) };
}
