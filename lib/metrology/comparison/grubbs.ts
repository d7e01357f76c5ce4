import { mean } from "../number/mean";
import { studentQuantile } from "../number/student";
import { sum } from "../number/sum";
import { found, type Outcome, refused } from "../outcome";

export type GrubbsFlag = {
  /** Place of the reading furthest from the mean. */
  readonly suspect: number;
  readonly g: number;
  readonly critical: number;
  /** A person decides what becomes of it, with a reason: nothing is left out here. */
  readonly isFlagged: boolean;
};

const LEAST_READINGS = 3;

/**
 * Critical value of Grubbs' test, two-sided: (n − 1)/√n·√(t²/(n − 2 + t²)), t the upper α/(2n) point of Student's with n − 2
 * degrees of freedom (F. E. Grubbs, Technometrics 11 (1969) 1, from memory; n = 4, α = 0.05: 1.481). Pure number.
 * Problems: `too-few` below three readings; `not-applicable` for n that is not whole or α beyond 0 to 1.
 */
export function grubbsCritical(readings: number, alpha: number): Outcome<number> {
  if (!(readings >= LEAST_READINGS)) return refused("too-few", "Grubbs' test needs three readings");
  if (Math.floor(readings) !== readings || !(alpha > 0 && alpha < 1)) {
    return refused("not-applicable", `${readings} readings at α = ${alpha}`);
  }
  const t = studentQuantile(1 - alpha / readings, readings - 2);
  return found(((readings - 1) / Math.sqrt(readings)) * Math.sqrt((t * t) / (readings - 2 + t * t)));
}

/**
 * Flags the reading furthest from the mean, G = max|x − x̄|/s (source: `grubbsCritical`). For independent readings only:
 * a series of correlated scans breaks the test. Unit of x: any. Equal readings have nothing to flag.
 * Problems: `not-finite`, and those of `grubbsCritical`.
 */
export function flagByGrubbs(values: readonly number[], alpha: number): Outcome<GrubbsFlag> {
  const critical = grubbsCritical(values.length, alpha);
  if (!critical.ok) return critical;
  if (!values.every(Number.isFinite)) return refused("not-finite", "a reading is not a number");
  const centre = mean(values);
  const distances = values.map((value) => Math.abs(value - centre));
  const deviation = Math.sqrt(sum(distances.map((d) => d * d)) / (values.length - 1));
  const largest = Math.max(...distances);
  const g = deviation > 0 ? largest / deviation : 0;
  return found({
    suspect: distances.indexOf(largest),
    g,
    critical: critical.value,
    isFlagged: g > critical.value,
  });
}
