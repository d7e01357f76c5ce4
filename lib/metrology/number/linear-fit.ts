import { found, type Outcome, refused } from "../outcome";
import { mean } from "./mean";
import { sum } from "./sum";

/** y = meanY + slope·(x − meanX): the centred form, whose two parameters are uncorrelated. */
export type LinearFit = { readonly meanX: number; readonly meanY: number; readonly slope: number };

/** Least squares with equal weights. Needs two different x. */
export function linearFit(x: ArrayLike<number>, y: ArrayLike<number>): Outcome<LinearFit> {
  const count = x.length;
  if (count < 2) return refused("too-few", "a line needs at least two readings");
  const meanX = mean(x);
  const meanY = mean(y);
  const products = new Float64Array(count);
  const squares = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const dx = (x[i] ?? Number.NaN) - meanX;
    products[i] = dx * ((y[i] ?? Number.NaN) - meanY);
    squares[i] = dx * dx;
  }
  const spread = sum(squares);
  if (!(spread > 0)) return refused("too-few", "a line needs readings at two different times");
  return found({ meanX, meanY, slope: sum(products) / spread });
}

export function lineAt(fit: LinearFit, x: number): number {
  return fit.meanY + fit.slope * (x - fit.meanX);
}
