import { found, type Outcome, refused } from "../outcome";

/** Share of a variance below which what is left of it is the rounding of what was taken off. */
const ROUNDING = 1e-12;

/**
 * L, lower triangular, with L·Lᵀ = V (Golub and Van Loan, Matrix Computations, 4.2: from memory), for a covariance
 * matrix V in the square of a unit; L is in that unit. V may be singular, as errors shared by all make it: where
 * nothing is left of a variance its column is zero. With L, gᵀVg = |Lᵀg|² cannot come out negative.
 * Problems: `not-finite`; `not-applicable` for a matrix that is not square and symmetric; `no-solution` for one that
 * is not a covariance (a variance below zero, or a correlation beyond 1, alone or together).
 */
export function cholesky(
  covariance: readonly (readonly number[])[],
): Outcome<readonly (readonly number[])[]> {
  const n = covariance.length;
  for (const [i, row] of covariance.entries()) {
    if (row.length !== n) return refused("not-applicable", "a covariance matrix is square");
    for (const [j, value] of row.entries()) {
      if (!Number.isFinite(value))
        return refused("not-finite", `covariance ${i + 1}, ${j + 1} is not a number`);
      const mirrored = (covariance[j] as readonly number[])[i] as number;
      if (Math.abs(value - mirrored) > ROUNDING * (Math.abs(value) + Math.abs(mirrored))) {
        return refused("not-applicable", `covariance ${i + 1}, ${j + 1} differs from ${j + 1}, ${i + 1}`);
      }
    }
  }
  const lower = covariance.map(() => new Array<number>(n).fill(0));
  const left = (i: number, j: number): number => {
    let rest = (covariance[i] as readonly number[])[j] as number;
    const [a, b] = [lower[i] as number[], lower[j] as number[]];
    for (let k = 0; k < j; k += 1) rest -= (a[k] as number) * (b[k] as number);
    return rest;
  };
  const deviations = covariance.map((row, i) => Math.sqrt(Math.max(0, row[i] as number)));
  for (const [j, deviation] of deviations.entries()) {
    const variance = left(j, j);
    const slack = n * ROUNDING * deviation * deviation;
    if (variance < -slack || ((covariance[j] as readonly number[])[j] as number) < 0)
      return notACovariance(j);
    const pivot = variance > slack ? Math.sqrt(variance) : 0;
    (lower[j] as number[])[j] = pivot;
    for (let i = j + 1; i < n; i += 1) {
      const rest = left(i, j);
      if (pivot > 0) (lower[i] as number[])[j] = rest / pivot;
      // Rounding leaves up to √slack of the other's deviation where the variance itself is spent.
      else if (Math.abs(rest) > 1e-5 * deviation * (deviations[i] as number)) return notACovariance(i);
    }
  }
  return found(lower);
}

function notACovariance(place: number): ReturnType<typeof refused> {
  return refused("no-solution", `row ${place + 1} makes this no covariance matrix: a correlation beyond 1`);
}
