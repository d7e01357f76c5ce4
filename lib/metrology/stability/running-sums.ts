import { firstAfter, firstAtOrAfter } from "./bounds";
import type { ReferenceSeries } from "./stability-types";

/** The line through a stretch of readings, in about the same time however long the stretch is. */
export type StretchLine = { readonly readings: number; readonly slope: number; at(seconds: number): number };

export type RunningSums = {
  /** Both ends included; null with fewer than two readings. */
  line(fromSeconds: number, toSeconds: number): StretchLine | null;
};

/**
 * Running sums of t, T, t² and t·T, so that searching all windows of a dwell is cheap. Times count from
 * the first reading and temperatures from the nominal, which keeps about 1e-9 °C. Good enough to search
 * by (this project's own method; its sums are those of a straight line, JCGM 100:2008, H.3). A reading that is not a number makes
 * NaN of every line over it. What is reported is computed afresh by assessWindow.
 */
export function runningSums(reference: ReferenceSeries, nominalCelsius: number): RunningSums {
  const { seconds, celsius } = reference;
  const count = seconds.length;
  const origin = seconds[0] as number;
  const sums = [0, 1, 2, 3].map(() => new Float64Array(count + 1));
  const [sx, sy, sxx, sxy] = sums as [Float64Array, Float64Array, Float64Array, Float64Array];
  for (let i = 0; i < count; i += 1) {
    const x = (seconds[i] as number) - origin;
    const y = (celsius[i] as number) - nominalCelsius;
    sx[i + 1] = (sx[i] as number) + x;
    sy[i + 1] = (sy[i] as number) + y;
    sxx[i + 1] = (sxx[i] as number) + x * x;
    sxy[i + 1] = (sxy[i] as number) + x * y;
  }
  const between = (s: Float64Array, from: number, to: number): number =>
    (s[to] as number) - (s[from] as number);
  return {
    line(fromSeconds, toSeconds) {
      const from = firstAtOrAfter(seconds, fromSeconds);
      const to = firstAfter(seconds, toSeconds);
      const n = to - from;
      if (n < 2) return null;
      const meanX = between(sx, from, to) / n;
      const meanY = between(sy, from, to) / n;
      const squares = between(sxx, from, to) - n * meanX * meanX;
      if (!(squares > 0)) return null;
      const slope = (between(sxy, from, to) - n * meanX * meanY) / squares;
      return { readings: n, slope, at: (t) => nominalCelsius + meanY + slope * (t - origin - meanX) };
    },
  };
}
