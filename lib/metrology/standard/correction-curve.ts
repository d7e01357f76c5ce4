import type { ValueAndSlope } from "../number/solve-increasing";
import { found, type Outcome, refused } from "../outcome";
import { emf } from "../thermocouple/emf";
import type { ReferenceFunction } from "../thermocouple/reference-function";
import { seebeck } from "../thermocouple/seebeck";
import { seebeckSlope } from "../thermocouple/seebeck-slope";
import type { AddedEmf } from "../thermocouple/temperature";
import { type CertifiedCurve, certifiedCurve } from "./certified-curve";
import { checkCorrection } from "./check-correction";
import type { StandardCorrection } from "./standard-correction";

/** A certificate's correction ready for use with its type's reference function. */
export type CorrectionCurve = {
  readonly fromCelsius: number;
  readonly toCelsius: number;
  /** ΔE(t) in µV and its slope in µV/°C; held constant beyond the range, so that a solver may look there. */
  readonly added: AddedEmf;
  /** Standard uncertainty of the interpolation at t, µV. */
  readonly interpolationMicrovolt: (celsius: number) => number;
};

export type CorrectionValue = {
  readonly deviationMicrovolt: number;
  readonly slopeMicrovoltPerCelsius: number;
  readonly interpolationMicrovolt: number;
};

/**
 * The correction of a standard as ΔE(t) = E_ref(t) − E_table(t) in µV: as it stands, from an error in °C by ΔE = Δt·S(t)
 * (EA-4/02 S5 carries temperature to emf so; the exact difference E(t + Δt) − E(t) is ½·S′·Δt² off, below 0.01 µV for
 * 1 °C), or as the standard's own function less the table. t in °C.
 * Problems: those of `checkCorrection`; `outside-range` when the range is not all within the type's reference function.
 */
export function correctionCurve(
  correction: StandardCorrection,
  reference: ReferenceFunction,
): Outcome<CorrectionCurve> {
  const refusal = checkCorrection(correction);
  if (refusal) return refusal;
  const certified = certifiedCurve(correction);
  const { fromCelsius, toCelsius } = certified;
  for (const end of [fromCelsius, toCelsius]) {
    const table = emf(reference, end);
    if (!table.ok) return table;
  }
  const toEmf = converter(certified, reference);
  return found({
    fromCelsius,
    toCelsius,
    added: (celsius) => {
      const at = Math.min(toCelsius, Math.max(fromCelsius, celsius));
      const { value, slope } = toEmf(at);
      return { value, slope: at === celsius ? slope : 0 };
    },
    interpolationMicrovolt: (celsius) => {
      const at = Math.min(toCelsius, Math.max(fromCelsius, celsius));
      const scale = certified.quantity === "temperature" ? numberOf(seebeck(reference, at)) : 1;
      return certified.interpolation(at) * scale;
    },
  });
}

/** The number of a function that was shown to hold at both ends of the range, and so within it. */
function numberOf(outcome: Outcome<number>): number {
  return (outcome as { readonly value: number }).value;
}

function converter(certified: CertifiedCurve, reference: ReferenceFunction): (t: number) => ValueAndSlope {
  if (certified.quantity === "emf") return certified.valueAt;
  if (certified.quantity === "whole-emf") {
    return (t) => {
      const { value, slope } = certified.valueAt(t);
      return { value: value - numberOf(emf(reference, t)), slope: slope - numberOf(seebeck(reference, t)) };
    };
  }
  return (t) => {
    const { value, slope } = certified.valueAt(t);
    const s = numberOf(seebeck(reference, t));
    return { value: value * s, slope: slope * s + value * numberOf(seebeckSlope(reference, t)) };
  };
}

/** A temperature that stands on the last point may come out of a solver a trifle beyond it. */
const SLACK_CELSIUS = 1e-6;

/**
 * ΔE(t), its slope and its interpolation uncertainty (source: `correctionCurve`), t in °C within the certificate's range.
 * Problems: `not-finite`; `outside-range` beyond the certificate: a standard says nothing there.
 */
export function correctionValue(curve: CorrectionCurve, celsius: number): Outcome<CorrectionValue> {
  if (!Number.isFinite(celsius)) return refused("not-finite", `${celsius} is not a temperature`);
  const { fromCelsius, toCelsius } = curve;
  if (celsius < fromCelsius - SLACK_CELSIUS || celsius > toCelsius + SLACK_CELSIUS) {
    const range = `${fromCelsius} °C to ${toCelsius} °C`;
    return refused("outside-range", `the certificate holds for ${range}, not at ${celsius} °C`);
  }
  const { value, slope } = curve.added(celsius);
  return found({
    deviationMicrovolt: value,
    slopeMicrovoltPerCelsius: slope,
    interpolationMicrovolt: curve.interpolationMicrovolt(celsius),
  });
}
