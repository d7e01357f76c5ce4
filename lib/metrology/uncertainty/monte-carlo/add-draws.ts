import { exponential } from "../../number/exponential";
import { logarithm } from "../../number/logarithm";
import { addNormals } from "../../number/normal-deviate";
import { addRectangles, type RandomStream, uniform } from "../../number/random";
import type { DrawnInput, Shape } from "./drawn-input";

/** Inputs with their amounts by shape: what is most frequent is drawn for all its lines in one loop. */
export type DrawPlan = {
  readonly normals: Float64Array;
  readonly rectangles: Float64Array;
  readonly others: readonly DrawnInput[];
};

/**
 * Sorts inputs by shape (the order of drawing, and nothing else, depends on it). Amounts in the result's unit; those of 0 draw
 * nothing. Source: `addDraws`; range: `DrawnInput` as `drawnInput` makes it; no error cases.
 */
export function planDraws(inputs: readonly DrawnInput[]): DrawPlan {
  const acting = inputs.filter(({ amount }) => amount !== 0);
  const amountsOf = (kind: Shape["kind"]): Float64Array =>
    Float64Array.from(acting.flatMap(({ shape, amount }) => (shape.kind === kind ? [amount] : [])));
  return {
    normals: amountsOf("normal"),
    rectangles: amountsOf("rectangular"),
    others: acting.filter(({ shape }) => shape.kind !== "normal" && shape.kind !== "rectangular"),
  };
}

/**
 * Adds one draw of every input to each of values[from … to − 1], in the result's unit.
 *
 * Normal: `addNormals`. Rectangular (JCGM 101:2008, 6.4.2.4), trapezoidal (6.4.4.4) and triangular (6.4.5.4) from one or
 * two uniform numbers. Arcsine (6.4.6) without a sine: a point inside the unit circle at a uniform angle θ has
 * (x² − y²)/(x² + y²) = cos 2θ (J. von Neumann's way; from memory). Student's t (6.4.9) by R. W. Bailey's polar method (Math.
 * Comp. 62 (1994) 779; from memory), which needs no whole ν. Range: `planDraws`; no error cases.
 */
export function addDraws(
  plan: DrawPlan,
  stream: RandomStream,
  values: Float64Array,
  from: number,
  to: number,
): void {
  if (plan.normals.length > 0) addNormals(stream, plan.normals, values, from, to);
  if (plan.rectangles.length > 0) addRectangles(stream, plan.rectangles, values, from, to);
  for (const { shape, amount } of plan.others) {
    for (let i = from; i < to; i += 1) values[i] = (values[i] as number) + amount * draw(shape, stream);
  }
}

function draw(shape: Shape, stream: RandomStream): number {
  switch (shape.kind) {
    case "trapezoidal":
      return trapezoid(shape.beta, stream);
    case "arcsine":
      return cosine(stream);
    case "student":
      return student(shape.degreesOfFreedom, stream);
    default:
      return trapezoid(0, stream);
  }
}

/** The sum of two rectangles of half-widths (1 + β)/2 and (1 − β)/2; with β = 0 the triangle. */
function trapezoid(beta: number, stream: RandomStream): number {
  const first = 2 * uniform(stream) - 1;
  const second = 2 * uniform(stream) - 1;
  return ((1 + beta) / 2) * first + ((1 - beta) / 2) * second;
}

/** The cosine of an angle uniform over the whole circle. */
function cosine(stream: RandomStream): number {
  for (;;) {
    const x = 2 * uniform(stream) - 1;
    const y = 2 * uniform(stream) - 1;
    const [xx, yy] = [x * x, y * y];
    const square = xx + yy;
    if (square > 0 && square < 1) return (xx - yy) / square;
  }
}

function student(degreesOfFreedom: number, stream: RandomStream): number {
  for (;;) {
    const x = 2 * uniform(stream) - 1;
    const y = 2 * uniform(stream) - 1;
    const square = x * x + y * y;
    if (square > 0 && square < 1) {
      const power = exponential((-2 / degreesOfFreedom) * logarithm(square));
      return x * Math.sqrt((degreesOfFreedom * (power - 1)) / square);
    }
  }
}
