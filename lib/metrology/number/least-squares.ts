import { found, type Outcome, refused } from "../outcome";
import { triangulate } from "./householder";
import { sum } from "./sum";

/** The fit of y = X·a with weights; p coefficients, n observations. Units: those of the columns of X and of y. */
export type LeastSquaresFit = {
  readonly coefficients: readonly number[];
  /** (XᵀWX)⁻¹, p × p: the coefficients' covariance when 1/w is the variance of each y and they are independent. */
  readonly inverseNormal: readonly (readonly number[])[];
  /** (XᵀWX)⁻¹XᵀW, p × n: what each coefficient takes of each y, so that any covariance of y can be propagated. */
  readonly map: readonly (readonly number[])[];
  /** y − X·a. */
  readonly residuals: readonly number[];
  /** Σ w·(y − X·a)². */
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
};

/** What is left of a column after the others are taken out, as a share of it, below which it says nothing of its own. */
const RANK_LIMIT = 1e-10;

/**
 * Weighted linear least squares by Householder's QR of √W·X with its columns brought to length 1: Björck, Numerical Methods
 * for Least Squares Problems (SIAM 1996), sections 2.3 and 2.7 (from memory). The normal equations square the condition
 * number; this does not. `design` has one row for each y; weights above 0, in 1/unit(y)².
 * Problems: `not-finite`; `too-few` observations for the columns; `not-applicable` for lengths that differ or a weight
 * that is not positive; `no-solution` when the columns cannot be told apart.
 */
export function leastSquares(
  design: readonly (readonly number[])[],
  y: readonly number[],
  weights: readonly number[],
): Outcome<LeastSquaresFit> {
  const refusal = check(design, y, weights);
  if (refusal) return refusal;
  const n = y.length;
  const p = (design[0] as readonly number[]).length;
  const roots = weights.map((weight) => Math.sqrt(weight));
  const columns: Float64Array[] = [];
  const lengths: number[] = [];
  for (let j = 0; j < p; j += 1) {
    const column = new Float64Array(n);
    for (const [i, row] of design.entries()) column[i] = (row[j] as number) * (roots[i] as number);
    const length = Math.sqrt(sum(column.map((x) => x * x)));
    if (!(length > 0)) return refused("no-solution", `coefficient ${j + 1} acts on no observation`);
    lengths.push(length);
    columns.push(column.map((x) => x / length));
  }
  const { upper, thin } = triangulate(columns);
  const weakest = upper.findIndex((row, k) => Math.abs(row[k] as number) < RANK_LIMIT);
  if (weakest >= 0) {
    return refused("no-solution", `coefficient ${weakest + 1} cannot be told apart from those before it`);
  }
  const inverse = invertUpper(upper);
  const map = inverse.map((row, j) =>
    roots.map(
      (root, i) =>
        (dot(
          row,
          thin.map((q) => q[i] as number),
        ) *
          root) /
        (lengths[j] as number),
    ),
  );
  const coefficients = map.map((row) => dot(row, y));
  const residuals = design.map((row, i) => (y[i] as number) - dot(row, coefficients));
  return found({
    coefficients,
    inverseNormal: inverse.map((row, i) =>
      inverse.map((other, j) => dot(row, other) / (lengths[i] as number) / (lengths[j] as number)),
    ),
    map,
    residuals,
    chiSquare: sum(residuals.map((residual, i) => residual * residual * (weights[i] as number))),
    degreesOfFreedom: n - p,
  });
}

function check(
  design: readonly (readonly number[])[],
  y: readonly number[],
  weights: readonly number[],
): ReturnType<typeof refused> | null {
  const p = design[0]?.length ?? 0;
  if (p === 0) return refused("too-few", "a fit needs at least one coefficient and one observation");
  if (y.length !== design.length || weights.length !== y.length || design.some((row) => row.length !== p)) {
    return refused("not-applicable", "each observation needs its row, its value and its weight");
  }
  if (y.length < p) return refused("too-few", `${y.length} observations cannot give ${p} coefficients`);
  if (![...y, ...weights, ...design.flat()].every(Number.isFinite)) {
    return refused("not-finite", "a value, a weight or a place of the fit is not a number");
  }
  if (!weights.every((weight) => weight > 0)) return refused("not-applicable", "a weight must be above zero");
  return null;
}

/** Σ aᵢ·bᵢ, rounded once. */
function dot(a: readonly number[], b: readonly number[]): number {
  return sum(a.map((x, i) => x * (b[i] as number)));
}

/** R⁻¹ of an upper triangle with no zero on its diagonal, by back substitution column by column. */
function invertUpper(upper: readonly (readonly number[])[]): number[][] {
  const p = upper.length;
  const inverse = upper.map(() => new Array<number>(p).fill(0));
  for (let column = 0; column < p; column += 1) {
    for (let i = column; i >= 0; i -= 1) {
      let rest = i === column ? 1 : 0;
      for (let k = i + 1; k <= column; k += 1) {
        rest -= ((upper[i] as readonly number[])[k] as number) * ((inverse[k] as number[])[column] as number);
      }
      (inverse[i] as number[])[column] = rest / ((upper[i] as readonly number[])[i] as number);
    }
  }
  return inverse;
}
