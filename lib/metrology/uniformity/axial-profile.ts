import { SQRT_3 } from "../number/constants";
import { type LeastSquaresFit, leastSquares } from "../number/least-squares";
import { mean } from "../number/mean";
import { found, type Outcome, refused } from "../outcome";

/** One stop of the probe: where its tip stood, and what it and the fixed monitor read at the same moment. */
export type ProfileReading = {
  /** Along the tube, mm, from any zero that the whole survey shares. */
  readonly millimetre: number;
  readonly probeCelsius: number;
  readonly monitorCelsius: number;
  /** Rising: a clock in any unit, or the number of the stop. */
  readonly moment: number;
};

export type AxialInput = {
  /** In the order they were taken, there and back. */
  readonly readings: readonly ProfileReading[];
  /** The length the figures are stated over. */
  readonly fromMillimetre: number;
  readonly toMillimetre: number;
  /** Half-width, °C, of what the probe's own wires add as they lie in other gradients at each stop. */
  readonly probeInhomogeneityCelsius: number;
  /** u, °C, of one reading against the next on the same range of the meter. */
  readonly meterCelsius: number;
};

export type ProfilePoint = {
  readonly millimetre: number;
  /** Against the mean of the stops in the stated length, °C. */
  readonly celsius: number;
  readonly visits: number;
  readonly isInside: boolean;
};

export type AxialProfile = {
  readonly points: readonly ProfilePoint[];
  readonly lengthMillimetre: number;
  readonly halfRangeCelsius: number;
  readonly fullRangeCelsius: number;
  /** u of the half range, °C, and what it is made of. */
  readonly standardUncertainty: number;
  readonly parts: {
    readonly repeatability: number;
    readonly driftResidue: number;
    readonly probeInhomogeneity: number;
    readonly meter: number;
  };
  readonly degreesOfFreedom: number;
  /** Scatter of one reading about profile and drift, °C. */
  readonly residualDeviation: number;
  /** What the line of drift between probe and monitor comes to over the survey, °C. */
  readonly driftCelsius: number;
};

const FEWEST_PLACES = 3;

/**
 * Axial uniformity from a probe moved stepwise beside a fixed monitor. The monitor's reading is taken off the probe's: what both
 * see of the furnace's drift is gone. The rest is fitted by least squares as one value a place and one line in time, so
 * the order of the stops need not be symmetric (the same idea as EA-4/02 S5's sequence, there by symmetry). Half range
 * = (max − min)/2 of the places in the stated length; a figure without its length means nothing.
 *
 * u of the half range: repeatability from the residuals, through the fit's covariance; the meter and the probe's
 * inhomogeneity as independent at the two extreme places, √2·u/2; and the drift that going there and back cannot see. Of
 * an exponential approach x = T/2τ the part that is even about the turn, cosh x − 1, is hidden, the odd part sinh x is
 * seen; the first is no more than the second while the survey is shorter than about four time constants. So half of the
 * drift that was seen may be hidden between two places, and a quarter in the half range: a rectangle's half-width.
 * The composition of u is common practice, no source.
 *
 * °C, mm. Problems: `not-finite`; `too-few` for fewer than three places in the length, or for no place visited again;
 * `outside-range` when the stated length is not within the surveyed one; `not-applicable` for a length that is not
 * above 0, moments that do not rise, or an uncertainty below 0; `no-solution` when drift and profile cannot be told apart.
 */
export function axialProfile(input: AxialInput): Outcome<AxialProfile> {
  const { readings } = input;
  const refusal = check(input);
  if (refusal) return refusal;
  const places = [...new Set(readings.map(({ millimetre }) => millimetre))].sort((a, b) => a - b);
  const inside = places.filter((place) => isInside(input, place));
  const reach = { from: places[0] as number, to: places[places.length - 1] as number };
  if (input.fromMillimetre < reach.from || input.toMillimetre > reach.to) {
    return refused("outside-range", `the survey reaches from ${reach.from} mm to ${reach.to} mm`);
  }
  if (inside.length < FEWEST_PLACES) {
    return refused("too-few", `${inside.length} places in the stated length; it takes ${FEWEST_PLACES}`);
  }
  // One value a place and one line of drift: one reading more than that tells how well they repeat.
  if (readings.length < places.length + 2) {
    return refused("too-few", "go back over the places: nothing says how well a reading repeats");
  }
  const fit = fitProfile(readings, places);
  if (!fit.ok) return fit;
  return found(stateProfile(input, places, fit.value));
}

/** One coefficient a place, and last the drift over the whole survey. */
function fitProfile(readings: readonly ProfileReading[], places: readonly number[]) {
  const start = (readings[0] as ProfileReading).moment;
  const duration = (readings[readings.length - 1] as ProfileReading).moment - start;
  return leastSquares(
    readings.map(({ millimetre, moment }) => [
      ...places.map((place) => (place === millimetre ? 1 : 0)),
      (moment - start) / duration - 0.5,
    ]),
    readings.map(({ probeCelsius, monitorCelsius }) => probeCelsius - monitorCelsius),
    readings.map(() => 1),
  );
}

function stateProfile(input: AxialInput, places: readonly number[], fit: LeastSquaresFit): AxialProfile {
  const value = (i: number) => fit.coefficients[i] as number;
  const inside = places.flatMap((place, i) => (isInside(input, place) ? [i] : []));
  const centre = mean(inside.map(value));
  const highest = inside.reduce((best, i) => (value(i) > value(best) ? i : best));
  const lowest = inside.reduce((best, i) => (value(i) < value(best) ? i : best));
  const q = (i: number, j: number) => (fit.inverseNormal[i] as readonly number[])[j] as number;
  const spread = q(highest, highest) + q(lowest, lowest) - 2 * q(highest, lowest);
  const residualDeviation = Math.sqrt(fit.chiSquare / fit.degreesOfFreedom);
  const driftCelsius = value(places.length);
  const parts = {
    repeatability: (residualDeviation * Math.sqrt(Math.max(0, spread))) / 2,
    driftResidue: Math.abs(driftCelsius) / 4 / SQRT_3,
    probeInhomogeneity: input.probeInhomogeneityCelsius / SQRT_3 / Math.sqrt(2),
    meter: input.meterCelsius / Math.sqrt(2),
  };
  const fullRangeCelsius = value(highest) - value(lowest);
  return {
    points: places.map((millimetre, i) => ({
      millimetre,
      celsius: value(i) - centre,
      visits: input.readings.filter((reading) => reading.millimetre === millimetre).length,
      isInside: isInside(input, millimetre),
    })),
    lengthMillimetre: input.toMillimetre - input.fromMillimetre,
    halfRangeCelsius: fullRangeCelsius / 2,
    fullRangeCelsius,
    standardUncertainty: rootSumSquares(Object.values(parts)),
    parts,
    degreesOfFreedom: fit.degreesOfFreedom,
    residualDeviation,
    driftCelsius,
  };
}

function isInside(input: AxialInput, millimetre: number): boolean {
  return millimetre >= input.fromMillimetre && millimetre <= input.toMillimetre;
}

function rootSumSquares(values: readonly number[]): number {
  return Math.sqrt(values.reduce((total, value) => total + value * value, 0));
}

function check(input: AxialInput): ReturnType<typeof refused> | null {
  const { readings, fromMillimetre, toMillimetre, probeInhomogeneityCelsius, meterCelsius } = input;
  const numbers = [fromMillimetre, toMillimetre, probeInhomogeneityCelsius, meterCelsius];
  if (![...numbers, ...readings.flatMap((reading) => Object.values(reading))].every(Number.isFinite)) {
    return refused("not-finite", "a place, a reading or an uncertainty is not a number");
  }
  if (!(toMillimetre > fromMillimetre)) {
    return refused("not-applicable", "the stated length runs from a lower to a higher place");
  }
  if (probeInhomogeneityCelsius < 0 || meterCelsius < 0) {
    return refused("not-applicable", "uncertainties from zero up");
  }
  const isRising = readings.every(
    (one, i) => i === 0 || one.moment > (readings[i - 1] as ProfileReading).moment,
  );
  if (!isRising) return refused("not-applicable", "the readings stand in the order of their moments");
  if (readings.length < 2 * FEWEST_PLACES) {
    return refused("too-few", `${readings.length} readings; three places there and back are six`);
  }
  return null;
}
