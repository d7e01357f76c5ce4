import { mean } from "../number/mean";
import { found, type Outcome, refused } from "../outcome";

export type InhomogeneityScan = {
  /** A sensor moved through a steep gradient: its depth, its emf with the reference junction at rest, and the bath or furnace meanwhile. */
  readonly readings: readonly {
    readonly millimetre: number;
    readonly microvolt: number;
    readonly monitorCelsius: number;
  }[];
  /** Emf over the gradient: E at the hot side minus E at the cold side, µV. */
  readonly spanMicrovolt: number;
  /** The sensor's Seebeck coefficient at the hot side, µV/°C: it takes the monitor's changes off. */
  readonly microvoltPerCelsius: number;
  /** u, µV, of one reading against another. */
  readonly meterMicrovolt: number;
};

export type Inhomogeneity = {
  /** (Emax − Emin)/2 over the span: to be taken as a rectangle's half-width of the emf at calibration. */
  readonly relativeHalfWidth: number;
  readonly halfWidthMicrovolt: number;
  /** u of the relative half-width. */
  readonly standardUncertainty: number;
  readonly depths: readonly { readonly millimetre: number; readonly microvolt: number }[];
  /** How far the sensor was moved through the gradient, mm: only this much of the wire was looked at. */
  readonly scannedMillimetre: number;
};

const FEWEST_DEPTHS = 5;

/**
 * Inhomogeneity from a scan: emf arises in the gradient, so a sensor moved through one shows what its wires add piece by piece.
 * (Emax − Emin)/2 relative to the emf over the gradient is taken as a rectangle's half-width, scaled to the emf at
 * calibration (EA-10/08 and EURAMET cg-8 describe such tests; the formula as given here is from memory of the trade's
 * practice). Readings at one depth are averaged; the monitor's changes are taken off through the Seebeck coefficient. u: the
 * meter and half the largest disagreement of one depth's readings as a rectangle, at both extremes: √2/2 over the span.
 *
 * µV, °C, mm. Problems: `not-finite`; `not-applicable` for a span of 0, a Seebeck coefficient or an uncertainty out of
 * range; `too-few` for fewer than five depths.
 */
export function inhomogeneityOfScan(input: InhomogeneityScan): Outcome<Inhomogeneity> {
  const { readings, spanMicrovolt, microvoltPerCelsius, meterMicrovolt } = input;
  const stated = [spanMicrovolt, microvoltPerCelsius, meterMicrovolt];
  if (![...stated, ...readings.flatMap((reading) => Object.values(reading))].every(Number.isFinite)) {
    return refused("not-finite", "a depth or a reading is not a number");
  }
  if (spanMicrovolt === 0 || microvoltPerCelsius <= 0 || meterMicrovolt < 0) {
    return refused("not-applicable", "a span other than 0, a Seebeck coefficient above 0, u from zero up");
  }
  const places = [...new Set(readings.map(({ millimetre }) => millimetre))].sort((a, b) => a - b);
  if (places.length < FEWEST_DEPTHS) return refused("too-few", `it takes ${FEWEST_DEPTHS} depths`);
  const usual = mean(readings.map(({ monitorCelsius }) => monitorCelsius));
  const visits = places.map((place) =>
    readings
      .filter(({ millimetre }) => millimetre === place)
      .map(({ microvolt, monitorCelsius }) => microvolt - microvoltPerCelsius * (monitorCelsius - usual)),
  );
  const emfs = visits.map((visit) => mean(visit));
  const halfWidthMicrovolt = (Math.max(...emfs) - Math.min(...emfs)) / 2;
  const disagreement = Math.max(...visits.map((visit) => Math.max(...visit) - Math.min(...visit)));
  const ofOne = meterMicrovolt * meterMicrovolt + (disagreement * disagreement) / 12;
  const span = Math.abs(spanMicrovolt);
  return found({
    relativeHalfWidth: halfWidthMicrovolt / span,
    halfWidthMicrovolt,
    standardUncertainty: Math.sqrt(ofOne / 2) / span,
    depths: places.map((millimetre, i) => ({ millimetre, microvolt: emfs[i] as number })),
    scannedMillimetre: (places[places.length - 1] as number) - (places[0] as number),
  });
}
