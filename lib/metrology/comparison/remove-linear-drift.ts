import { leastSquares } from "../number/least-squares";
import { found, type Outcome, refused } from "../outcome";
import type { PolarReadings } from "./average-polarity";

export type DriftFreeEmf = {
  /** Emf at the moment asked for, µV. */
  readonly microvolt: number;
  readonly slopeMicrovoltPerSecond: number;
  /** What does not turn with the leads, µV; null where no lead was reversed: it cannot be seen then. */
  readonly parasiticMicrovolt: number | null;
  /** Scatter about the line, µV, with its degrees of freedom; 0 when none are left. */
  readonly residualDeviation: number;
  readonly degreesOfFreedom: number;
  /** Type A of `microvolt`: right for independent readings only. Successive scans are not: see `typeAFromBlocks`. */
  readonly standardUncertainty: number;
};

/**
 * One channel's emf at a moment by least squares on V = p·(E + b·(τ − τ₀)) + z, p the polarity, z the parasitic emf:
 * linear drift and parasitic emf are taken out together, whatever the order of the readings (EA-4/02 S5 does it by the
 * symmetry of its sequence; this needs none). Seconds and µV. `atSeconds` may lie outside the readings' times: the
 * uncertainty grows accordingly.
 * Problems: `too-few` readings for what is fitted; `not-finite`; `not-applicable` for a polarity that is none; `no-solution` when all were taken at one moment.
 */
export function removeLinearDrift(readings: PolarReadings, atSeconds: number): Outcome<DriftFreeEmf> {
  const polarity = Array.from(readings.polarity);
  if (!Number.isFinite(atSeconds)) return refused("not-finite", `${atSeconds} is not a moment`);
  if (!polarity.every((p) => p === 1 || p === -1)) return refused("not-applicable", "a polarity is 1 or −1");
  const isReversed = polarity.includes(1) && polarity.includes(-1);
  const seconds = Array.from(readings.seconds);
  const design = polarity.map((p, i) => {
    const row = [p, p * ((seconds[i] as number) - atSeconds)];
    return isReversed ? [...row, 1] : row;
  });
  const fit = leastSquares(
    design,
    Array.from(readings.microvolts),
    polarity.map(() => 1),
  );
  if (!fit.ok) return fit;
  const { coefficients, chiSquare, degreesOfFreedom, inverseNormal } = fit.value;
  const [microvolt, slope, parasitic] = coefficients as [number, number, number?];
  const residualDeviation = degreesOfFreedom > 0 ? Math.sqrt(chiSquare / degreesOfFreedom) : 0;
  const first = (inverseNormal[0] as readonly number[])[0] as number;
  return found({
    microvolt,
    slopeMicrovoltPerSecond: slope,
    parasiticMicrovolt: parasitic ?? null,
    residualDeviation,
    degreesOfFreedom,
    standardUncertainty: residualDeviation * Math.sqrt(first),
  });
}
