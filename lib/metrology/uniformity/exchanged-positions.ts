import { leastSquares } from "../number/least-squares";
import { found, type Outcome, refused } from "../outcome";

/** What one sensor read at one place in one arrangement; all of one arrangement were read together. */
export type ExchangeReading = {
  /** Number of the arrangement: sensors are exchanged from one to the next. */
  readonly arrangement: number;
  readonly place: string;
  readonly sensor: string;
  readonly celsius: number;
};

export type ExchangeInput = {
  readonly readings: readonly ExchangeReading[];
  /** The place the others are compared with: the centre, or where the references stand. */
  readonly centre: string;
  /** u, °C, of one reading against another on the same range of the meter. */
  readonly meterCelsius: number;
  /** s of one reading from earlier surveys, °C; null: from this survey's own residuals. */
  readonly statedRepeatability: { readonly deviation: number; readonly degreesOfFreedom: number } | null;
};

export type ExchangedPlace = {
  readonly place: string;
  /** Against the centre, °C. */
  readonly celsius: number;
  readonly standardUncertainty: number;
};

export type ExchangedPositions = {
  readonly places: readonly ExchangedPlace[];
  readonly halfRangeCelsius: number;
  readonly fullRangeCelsius: number;
  readonly standardUncertainty: number;
  /** Scatter of one reading, °C, as found or as stated, with its degrees of freedom. */
  readonly deviation: number;
  readonly degreesOfFreedom: number;
  /** The sensors' own differences from the first, °C: what the exchange took out. */
  readonly sensors: readonly { readonly sensor: string; readonly celsius: number }[];
};

/**
 * Differences between positions by exchange. Each reading is place + sensor + arrangement: the sensors' own differences and
 * the furnace's drift from one arrangement to the next are fitted and drop out. For two sensors swapped between two
 * places this is half the difference of the swapped differences: p = [(B₂ − A₁) + (B₁ − A₂)]/2. Several places hang together through the sensors
 * that visited them (least squares; the fit's covariance gives u). Half range = (max − min)/2 with the centre among them.
 * Exchange is common practice, no source; the fit is that of JCGM 100:2008, H.3, with indicator columns.
 *
 * °C. Problems: `not-finite`; `too-few` for fewer than two places, or where nothing says how well a reading repeats;
 * `not-applicable` for a centre that is not among the places, a place or a sensor twice in one arrangement, or an uncertainty below 0;
 * `no-solution` when sensors were not exchanged, so that a place cannot be told from the sensor in it.
 */
export function exchangedPositions(input: ExchangeInput): Outcome<ExchangedPositions> {
  const { readings, centre, meterCelsius, statedRepeatability } = input;
  const refusal = check(input);
  if (refusal) return refusal;
  const others = unique(readings.map(({ place }) => place)).filter((place) => place !== centre);
  const sensors = unique(readings.map(({ sensor }) => sensor));
  const arrangements = unique(readings.map(({ arrangement }) => arrangement)).slice(1);
  const unknowns = others.length + sensors.length + arrangements.length;
  if (!statedRepeatability && readings.length <= unknowns) {
    return refused("too-few", "exchange back once more: nothing says how well a reading repeats");
  }
  const fit = leastSquares(
    readings.map((reading) => [
      ...others.map((place) => (place === reading.place ? 1 : 0)),
      ...sensors.map((sensor) => (sensor === reading.sensor ? 1 : 0)),
      ...arrangements.map((arrangement) => (arrangement === reading.arrangement ? 1 : 0)),
    ]),
    readings.map(({ celsius }) => celsius),
    readings.map(() => 1),
  );
  if (!fit.ok) return fit;
  const { coefficients, inverseNormal } = fit.value;
  const own = fit.value.degreesOfFreedom;
  const deviation = statedRepeatability?.deviation ?? Math.sqrt(fit.value.chiSquare / own);
  const values = [0, ...others.map((_, i) => coefficients[i] as number)];
  // The centre is nought by definition: what it shares with another place is nought too.
  const q = (i: number, j: number) =>
    i === 0 || j === 0 ? 0 : ((inverseNormal[i - 1] as readonly number[])[j - 1] as number);
  const ofDifference = (i: number, j: number) => {
    const noise = deviation * deviation + meterCelsius * meterCelsius;
    return Math.sqrt(Math.max(0, noise * (q(i, i) + q(j, j) - 2 * q(i, j))));
  };
  const highest = values.reduce((best, value, i) => (value > (values[best] as number) ? i : best), 0);
  const lowest = values.reduce((best, value, i) => (value < (values[best] as number) ? i : best), 0);
  const fullRangeCelsius = (values[highest] as number) - (values[lowest] as number);
  const first = coefficients[others.length] as number;
  return found({
    places: [centre, ...others].map((place, i) => ({
      place,
      celsius: values[i] as number,
      standardUncertainty: ofDifference(i, 0),
    })),
    halfRangeCelsius: fullRangeCelsius / 2,
    fullRangeCelsius,
    standardUncertainty: ofDifference(highest, lowest) / 2,
    deviation,
    degreesOfFreedom: statedRepeatability?.degreesOfFreedom ?? own,
    sensors: sensors.map((sensor, i) => ({
      sensor,
      celsius: (coefficients[others.length + i] as number) - first,
    })),
  });
}

function unique<Value>(values: readonly Value[]): Value[] {
  return [...new Set(values)];
}

function check(input: ExchangeInput): ReturnType<typeof refused> | null {
  const { readings, centre, meterCelsius, statedRepeatability: stated } = input;
  const numbers = [meterCelsius, stated?.deviation ?? 0, stated?.degreesOfFreedom ?? 1];
  if (![...numbers, ...readings.map(({ celsius }) => celsius)].every(Number.isFinite)) {
    return refused("not-finite", "a reading or an uncertainty is not a number");
  }
  if (numbers.some((value) => value < 0)) return refused("not-applicable", "uncertainties from zero up");
  const places = unique(readings.map(({ place }) => place));
  if (places.length < 2) return refused("too-few", "a difference needs two places");
  if (!places.includes(centre)) return refused("not-applicable", `no sensor stood at ${centre}`);
  for (const one of ["place", "sensor"] as const) {
    const seen = unique(readings.map((reading) => `${reading.arrangement}\n${reading[one]}`));
    if (seen.length < readings.length) {
      return refused("not-applicable", `a ${one} stands twice in one arrangement`);
    }
  }
  return null;
}
