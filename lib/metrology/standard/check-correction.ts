import { refused } from "../outcome";
import { type StatedUncertainty, standardUncertainty } from "../uncertainty/standard-uncertainty";
import type { OwnFunctionPiece, StandardCorrection } from "./standard-correction";

type Refusal = ReturnType<typeof refused>;

/** Own functions are published to fractions of a microvolt: at a join they meet as well as that. */
const JOIN_CELSIUS = 1e-9;

/**
 * Whether a certificate's correction can be used at all: numbers that are numbers, a range that rises, points that
 * ascend, pieces that join (ISO/IEC 17025:2017, 7.11.2: data checked before use; from memory). Temperatures in °C.
 * null when all is well, else the problem: `too-few`, `not-finite`, `outside-range` (a range or points that do not
 * rise), `not-applicable` (second differences of fewer than three points, a reach or an uncertainty below zero).
 */
export function checkCorrection(correction: StandardCorrection): Refusal | null {
  switch (correction.kind) {
    case "polynomial":
      return checkPieces([{ ...correction, microvolt: correction.coefficients }], correction.interpolation);
    case "coefficients":
      return checkPieces(correction.pieces, correction.interpolation);
    case "points":
      return checkPoints(correction);
  }
}

function checkPieces(pieces: readonly OwnFunctionPiece[], interpolation: StatedUncertainty): Refusal | null {
  if (pieces.length === 0) return refused("too-few", "the certificate gives no coefficients");
  let end: number | null = null;
  for (const { fromCelsius, toCelsius, microvolt } of pieces) {
    if (microvolt.length === 0) return refused("too-few", "the certificate gives no coefficients");
    if (![fromCelsius, toCelsius, ...microvolt].every(Number.isFinite)) {
      return refused("not-finite", "a coefficient or an end of the certificate's range is not a number");
    }
    if (!(toCelsius > fromCelsius)) {
      return refused(
        "outside-range",
        `the certificate's range ${fromCelsius} °C to ${toCelsius} °C does not rise`,
      );
    }
    if (end !== null && Math.abs(fromCelsius - end) > JOIN_CELSIUS) {
      return refused("outside-range", `a piece ends at ${end} °C and the next begins at ${fromCelsius} °C`);
    }
    end = toCelsius;
  }
  return checkStated(interpolation);
}

function checkPoints(correction: Extract<StandardCorrection, { kind: "points" }>): Refusal | null {
  const { points, interpolation, singlePointReachCelsius } = correction;
  if (points.length === 0) return refused("too-few", "the certificate gives no points");
  let before = Number.NEGATIVE_INFINITY;
  for (const { celsius, value } of points) {
    if (!Number.isFinite(celsius) || !Number.isFinite(value)) {
      return refused("not-finite", "a point of the certificate is not a number");
    }
    if (!(celsius > before)) return refused("outside-range", `the points do not ascend at ${celsius} °C`);
    before = celsius;
  }
  if (!(singlePointReachCelsius >= 0 && Number.isFinite(singlePointReachCelsius))) {
    return refused("not-applicable", "the reach of a single point is a number of °C, not below zero");
  }
  if (interpolation.kind === "stated") return checkStated(interpolation.uncertainty);
  if (points.length >= 3) return null;
  return refused(
    "not-applicable",
    "fewer than three points have no second difference: state the uncertainty",
  );
}

function checkStated(stated: StatedUncertainty): Refusal | null {
  const standard = standardUncertainty(stated);
  if (standard >= 0 && Number.isFinite(standard)) return null;
  return refused("not-applicable", "the uncertainty of the interpolation is not a number from zero up");
}
