import { SQRT_3 } from "../number/constants";

/**
 * Half-width of the rectangle that stands for a measured half-width a known within u: √(a² + 3u²), so that its standard
 * uncertainty is √(a²/3 + u²): where in the width the sensor lies, and how well the width is known, are two errors that add
 * (JCGM 100:2008, 5.1.2). In the unit of both; both from 0 up. No error cases: NaN stays NaN.
 */
export function widenedHalfWidth(halfWidth: number, standardUncertainty: number): number {
  const widening = SQRT_3 * standardUncertainty;
  return Math.sqrt(halfWidth * halfWidth + widening * widening);
}
