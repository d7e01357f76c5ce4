import { found, type Outcome, refused } from "../outcome";

/** The correlation coefficient of two inputs, by their places in the list of inputs. */
export type Correlation = { readonly first: number; readonly second: number; readonly coefficient: number };

/** L with L·Lᵀ = R for the correlated inputs alone: row by row in their order, `rank` numbers each. */
export type CorrelationFactor = {
  /** Places of the correlated inputs in the list of all, ascending. */
  readonly inputs: readonly number[];
  readonly rows: readonly Float64Array[];
  readonly rank: number;
};

/** Room for the rounding of a matrix that is singular by intention, as r = 1 makes it. */
const SINGULAR = 1e-12;

/**
 * Refuses correlation coefficients that no set of quantities can have, and splits the others: R = L·Lᵀ.
 *
 * Source: the correlation matrix of a joint distribution is positive semidefinite (JCGM 101:2008, 3.21 and 6.4.8.1,
 * which draws correlated normals by L); the method is Cholesky's with pivoting, which stands zero eigenvalues: r = 1
 * between two inputs is common here. `count` inputs, coefficients are pure numbers.
 *
 * Refuses ("outside-range"): a place that is no input, an input with itself, a pair named twice, |r| > 1 or NaN, and
 * a matrix with a negative eigenvalue. Coefficients of a nearly singular matrix that were rounded to a few digits can
 * be refused for that: they contradict each other.
 */
export function correlationFactor(
  count: number,
  correlations: readonly Correlation[],
): Outcome<CorrelationFactor> {
  const problem = firstProblem(count, correlations);
  if (problem !== null) return refused("outside-range", problem);
  const inputs = [...new Set(correlations.flatMap(({ first, second }) => [first, second]))].sort(
    (a, b) => a - b,
  );
  const rest = inputs.map((_, i) => {
    const row = new Float64Array(inputs.length);
    row[i] = 1;
    return row;
  });
  for (const { first, second, coefficient } of correlations) {
    const [i, j] = [inputs.indexOf(first), inputs.indexOf(second)];
    (rest[i] as Float64Array)[j] = coefficient;
    (rest[j] as Float64Array)[i] = coefficient;
  }
  const rows = inputs.map(() => new Float64Array(inputs.length));
  const rank = factorize(rest, rows);
  if (rest.some((row) => row.some((left) => Math.abs(left) > SINGULAR * inputs.length))) {
    return refused(
      "outside-range",
      "The correlation coefficients contradict each other: their matrix has a negative eigenvalue.",
    );
  }
  return found({ inputs, rows: rows.map((row) => row.slice(0, rank)), rank });
}

function firstProblem(count: number, correlations: readonly Correlation[]): string | null {
  const seen = new Set<string>();
  for (const { first, second, coefficient } of correlations) {
    for (const place of [first, second]) {
      if (!(place >= 0 && place < count && Math.floor(place) === place)) {
        return `Correlation with input ${place}: there are ${count} inputs, counted from 0.`;
      }
    }
    if (first === second) return `Input ${first} is correlated with itself.`;
    const pair = `${Math.min(first, second)}-${Math.max(first, second)}`;
    if (seen.has(pair)) return `The correlation of inputs ${first} and ${second} is stated twice.`;
    seen.add(pair);
    if (!(Math.abs(coefficient) <= 1)) {
      return `Correlation coefficient ${coefficient} of inputs ${first} and ${second}: it lies from −1 to 1.`;
    }
  }
  return null;
}

/** Takes one column after the other off `rest` until no diagonal is left above rounding; returns how many. */
function factorize(rest: readonly Float64Array[], rows: readonly Float64Array[]): number {
  const size = rest.length;
  for (let column = 0; column < size; column += 1) {
    let pivot = 0;
    rest.forEach((row, i) => {
      if ((row[i] as number) > ((rest[pivot] as Float64Array)[pivot] as number)) pivot = i;
    });
    const pivotRow = Float64Array.from(rest[pivot] as Float64Array);
    const largest = pivotRow[pivot] as number;
    if (largest <= SINGULAR * size) return column;
    const root = Math.sqrt(largest);
    rows.forEach((row, i) => {
      row[column] = (pivotRow[i] as number) / root;
    });
    rest.forEach((row, i) => {
      const factor = (pivotRow[i] as number) / largest;
      for (let j = 0; j < size; j += 1) row[j] = (row[j] as number) - factor * (pivotRow[j] as number);
      // The pivot's own row and column are used up: exact zeros, not their rounding.
      row[pivot] = 0;
    });
    (rest[pivot] as Float64Array).fill(0);
  }
  return size;
}
