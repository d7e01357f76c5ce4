import { found, type Outcome, refused } from "../outcome";
import { mean } from "./mean";
import { sum } from "./sum";

/** y = meanY + slope·(x − meanX): the centred form, whose two parameters are uncorrelated. */
export type LinearFit = { readonly meanX: number; readonly meanY: number; readonly slope: number };

/**
 * Straight line by least squares with equal weights, in the centred form (JCGM 100:2008, H.3.2 and H.3.5). Units: those of
 * x and y; two arrays of one length; a value that is no number makes the line NaN. Problems: `too-few` for fewer than two
 * readings, or all at one x.
 */
export function linearFit(x: ArrayLike<number>, y: ArrayLike<number>): Outcome<LinearFit> {
  const count = x.length;
  if (count < 2) return refused("too-few", "a line needs at least two readings");
  const meanX = mean(x);
  const meanY = mean(y);
  const products = new Float64Array(count);
  const squares = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const dx = (x[i] as number) - meanX;
    products[i] = dx * ((y[i] as number) - meanY);
    squares[i] = dx * dx;
  }
  const spread = sum(squares);
  if (!(spread > 0)) return refused("too-few", "a line needs readings at two different times");
  return found({ meanX, meanY, slope: sum(products) / spread });
}

/** y of a fitted line at x, in the unit of y (source: `linearFit`). No error cases: NaN stays NaN. */
export function lineAt(fit: LinearFit, x: number): number {
  return fit.meanY + fit.slope * (x - fit.meanX);
}
