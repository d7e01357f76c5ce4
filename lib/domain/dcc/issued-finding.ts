import type { DccPlace } from "../calibration/dcc-certificate";

/** What is wrong with a digital certificate of our own, where, and by which clause of ISO/IEC 17025:2017. */
export type IssuedFinding = DccPlace & {
  readonly code: "issued";
  readonly clause: string;
  readonly message: string;
};

const nowhere: DccPlace = { path: "/digitalCalibrationCertificate", line: 1 };

export const finding = (clause: string, message: string, place: DccPlace = nowhere): IssuedFinding => ({
  code: "issued",
  clause,
  message,
  path: place.path,
  line: place.line,
});

/** One finding where something does not hold. */
export const demanded = (
  holds: boolean,
  clause: string,
  message: string,
  place?: DccPlace,
): readonly IssuedFinding[] => (holds ? [] : [finding(clause, message, place)]);
