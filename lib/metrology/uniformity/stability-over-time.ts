import { lineAt, linearFit } from "../number/linear-fit";
import { found, type Outcome, refused } from "../outcome";

export type StabilityInput = {
  /** Of the monitor, at rising times. */
  readonly readings: readonly { readonly minutes: number; readonly celsius: number }[];
  /** Length of a run's measuring window. */
  readonly windowMinutes: number;
  /** u, °C, of one reading against another on the same range of the meter. */
  readonly meterCelsius: number;
};

export type StabilityOverTime = {
  readonly windowMinutes: number;
  readonly windows: number;
  /** Largest |slope| × window of any window, °C, with the minute that window begins at. */
  readonly changeCelsius: number;
  readonly changeFromMinutes: number;
  /** Largest peak to peak about a window's own line, °C. */
  readonly peakToPeakCelsius: number;
  readonly peakToPeakFromMinutes: number;
  /** Half of the change and of what remains about the line together, °C. */
  readonly halfWidthCelsius: number;
  /** u of that half-width, °C. */
  readonly standardUncertainty: number;
};

const FEWEST_READINGS = 5;

/**
 * Stability of a furnace over time: in every window that fits, the slope of a straight line times the window's length, and the
 * peak to peak about that line; the worst of each. Half-width = (change + peak to peak)/2: any two moments of a window
 * lie within it of the middle. u: the scatter s about the worst window's line at both of its ends, s·√2, with the meter's √2·u,
 * halved. Nothing is divided by √n: successive readings of a furnace are correlated. Common practice, no source.
 *
 * °C and minutes. Problems: `not-finite`; `not-applicable` for a window or an uncertainty out of range, or times that do not rise; `too-few`
 * when no window is full, or one holds fewer than five readings.
 */
export function stabilityOverTime(input: StabilityInput): Outcome<StabilityOverTime> {
  const { readings, windowMinutes, meterCelsius } = input;
  const numbers = [windowMinutes, meterCelsius, ...readings.flatMap((reading) => Object.values(reading))];
  if (!numbers.every(Number.isFinite)) return refused("not-finite", "a time or a reading is not a number");
  if (!(windowMinutes > 0 && meterCelsius >= 0)) {
    return refused("not-applicable", "a window above 0 and an uncertainty from zero up");
  }
  const minutes = readings.map((reading) => reading.minutes);
  if (minutes.some((value, i) => i > 0 && value <= (minutes[i - 1] as number))) {
    return refused("not-applicable", "the readings stand in the order of their times");
  }
  const last = minutes[minutes.length - 1] ?? 0;
  const starts = minutes.filter((minute) => minute + windowMinutes <= last);
  if (starts.length === 0) return refused("too-few", `the record is shorter than ${windowMinutes} minutes`);
  let steepest: Stretch | null = null;
  let widest: Stretch | null = null;
  for (const from of starts) {
    const stretch = stretchFrom(input, from);
    if (!stretch.ok) return stretch;
    if (!steepest || stretch.value.change > steepest.change) steepest = stretch.value;
    if (!widest || stretch.value.peakToPeak > widest.peakToPeak) widest = stretch.value;
  }
  // There is a window: `starts` is not empty.
  const worst = steepest as Stretch;
  const noisiest = widest as Stretch;
  const scatter = worst.deviation * worst.deviation + meterCelsius * meterCelsius;
  return found({
    windowMinutes,
    windows: starts.length,
    changeCelsius: worst.change,
    changeFromMinutes: worst.from,
    peakToPeakCelsius: noisiest.peakToPeak,
    peakToPeakFromMinutes: noisiest.from,
    halfWidthCelsius: (worst.change + noisiest.peakToPeak) / 2,
    standardUncertainty: Math.sqrt(2 * scatter) / 2,
  });
}

type Stretch = {
  readonly from: number;
  readonly change: number;
  readonly peakToPeak: number;
  readonly deviation: number;
};

function stretchFrom({ readings, windowMinutes }: StabilityInput, from: number): Outcome<Stretch> {
  const inside = readings.filter(({ minutes }) => minutes >= from && minutes <= from + windowMinutes);
  const fit = linearFit(
    inside.map(({ minutes }) => minutes),
    inside.map(({ celsius }) => celsius),
  );
  if (!fit.ok || inside.length < FEWEST_READINGS) {
    return refused(
      "too-few",
      `the window from minute ${from} holds ${inside.length} readings; it takes ${FEWEST_READINGS}`,
    );
  }
  const rest = inside.map(({ minutes, celsius }) => celsius - lineAt(fit.value, minutes));
  const squares = rest.reduce((total, value) => total + value * value, 0);
  return found({
    from,
    change: Math.abs(fit.value.slope) * windowMinutes,
    peakToPeak: Math.max(...rest) - Math.min(...rest),
    deviation: Math.sqrt(squares / (inside.length - 2)),
  });
}
