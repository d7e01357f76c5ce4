import { found, type Outcome, refused } from "../outcome";
import type { Inhomogeneity } from "./inhomogeneity-of-scan";

export type TwoImmersions = {
  readonly first: { readonly millimetre: number; readonly microvolt: number };
  readonly second: { readonly millimetre: number; readonly microvolt: number };
  readonly spanMicrovolt: number;
  readonly meterMicrovolt: number;
};

const LEAST_APART_MILLIMETRE = 20;

/**
 * Inhomogeneity from two immersions at one temperature, at least 20 mm apart: half their difference, relative to the emf over the
 * gradient, as a rectangle's half-width (common practice, no source; the least distance from the practice of 20 to 50 mm).
 * It says less than a scan: only what changed between two depths, with what is lost along the sensor among it.
 *
 * µV, mm. Problems: `not-finite`; `not-applicable` for a span of 0 or an uncertainty below 0; `too-few` for depths closer than 20 mm.
 */
export function inhomogeneityOfTwoImmersions(input: TwoImmersions): Outcome<Inhomogeneity> {
  const { first, second, spanMicrovolt, meterMicrovolt } = input;
  const numbers = [...Object.values(first), ...Object.values(second), spanMicrovolt, meterMicrovolt];
  if (!numbers.every(Number.isFinite)) return refused("not-finite", "a depth or a reading is not a number");
  if (spanMicrovolt === 0 || meterMicrovolt < 0) {
    return refused("not-applicable", "a span other than 0 and an uncertainty from zero up");
  }
  const scannedMillimetre = Math.abs(second.millimetre - first.millimetre);
  if (scannedMillimetre < LEAST_APART_MILLIMETRE) {
    return refused("too-few", `two immersions stand at least ${LEAST_APART_MILLIMETRE} mm apart`);
  }
  const halfWidthMicrovolt = Math.abs(second.microvolt - first.microvolt) / 2;
  const span = Math.abs(spanMicrovolt);
  return found({
    relativeHalfWidth: halfWidthMicrovolt / span,
    halfWidthMicrovolt,
    standardUncertainty: meterMicrovolt / Math.sqrt(2) / span,
    depths: [first, second],
    scannedMillimetre,
  });
}
