/** X = Q·R: `upper` is R, p × p; `thin` holds the first p columns of Q, each of length n. */
export type Triangulated = {
  readonly upper: readonly (readonly number[])[];
  readonly thin: readonly Float64Array[];
};

/**
 * QR by Householder's method of reflections (Golub and Van Loan, Matrix Computations, section 5.2; from memory). `columns` are those
 * of X, at least as long as they are many, with finite values; pure numbers. A column that the others make up leaves a
 * diagonal near zero in R: the caller looks there. No error cases.
 */
export function triangulate(columns: readonly Float64Array[]): Triangulated {
  const work = columns.map((column) => column.slice());
  const mirrors: Float64Array[] = [];
  for (const [k, column] of work.entries()) {
    const mirror = mirrorFor(column, k);
    mirrors.push(mirror);
    for (const other of work.slice(k)) reflect(mirror, other, k);
  }
  const upper = work.map((_, i) => work.map((column, j) => (j < i ? 0 : (column[i] as number))));
  const thin = work.map((column, k) => {
    const q = new Float64Array(column.length);
    q[k] = 1;
    for (let m = mirrors.length - 1; m >= 0; m -= 1) reflect(mirrors[m] as Float64Array, q, m);
    return q;
  });
  return { upper, thin };
}

/** v of length √2, or zero, with (I − v·vᵀ)·column = 0 below place k. The sign is taken so that nothing cancels. */
function mirrorFor(column: Float64Array, k: number): Float64Array {
  const mirror = new Float64Array(column.length);
  let squares = 0;
  for (let i = k; i < column.length; i += 1) squares += (column[i] as number) * (column[i] as number);
  const length = Math.sqrt(squares);
  if (length === 0) return mirror;
  const head = column[k] as number;
  const pivot = head + (head < 0 ? -length : length);
  const scale = Math.sqrt(2 / (squares - head * head + pivot * pivot));
  mirror[k] = pivot * scale;
  for (let i = k + 1; i < column.length; i += 1) mirror[i] = (column[i] as number) * scale;
  return mirror;
}

function reflect(mirror: Float64Array, vector: Float64Array, from: number): void {
  let along = 0;
  for (let i = from; i < vector.length; i += 1) along += (mirror[i] as number) * (vector[i] as number);
  for (let i = from; i < vector.length; i += 1) {
    vector[i] = (vector[i] as number) - along * (mirror[i] as number);
  }
}
