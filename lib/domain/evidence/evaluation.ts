import type { TypeLetter } from "./schema";

/** What `evaluateEvidence` returns: unrounded numbers, and the strings as printed. Rounded once, here. */

/** One line of a budget. `effect` is signed: sensitivity × standard uncertainty, in the unit of its stage. */
export type EvaluatedContribution = {
  /** Stable key, e.g. "reference.calibration", "voltmeter.drift@sensor". */
  readonly key: string;
  /** The quantity in the trade's words, e.g. "Reference calibration". */
  readonly label: string;
  readonly symbol: string;
  readonly estimate: number | null;
  readonly standardUncertainty: number;
  readonly unit: "°C" | "µV";
  readonly distribution: "normal" | "rectangular" | "none";
  readonly degreesOfFreedom: number | null; // null = infinite
  readonly sensitivity: number;
  readonly sensitivityUnit: string;
  readonly effect: number;
  readonly source: string;
};

export type Budget = {
  readonly unit: "°C" | "µV";
  readonly contributions: readonly EvaluatedContribution[];
  readonly combined: number;
  readonly degreesOfFreedom: number | null;
};

export type ConformityState =
  | "pass"
  | "conditional-pass"
  | "conditional-fail"
  | "fail"
  | "not-decidable"
  | "no-tolerance-defined"
  | "no-statement";

export type EvaluatedConformity = {
  readonly state: ConformityState;
  readonly tolerance: { readonly standard: string; readonly class: string; readonly celsius: number } | null;
  readonly acceptanceCelsius: number | null;
  /** Probability that the true error lies inside the tolerance (JCGM 106:2012, 7.4), normal, two-sided. */
  readonly probability: number | null;
  readonly printed: { readonly tolerance: string | null; readonly probability: string | null };
};

export type EvaluatedReference = {
  readonly reference: string;
  readonly emfMicrovolt: number;
  readonly deviationMicrovolt: number;
  readonly celsius: number;
};

export type MeasuredPoint = {
  readonly state: "measured";
  readonly sensor: string;
  readonly setpoint: string;
  readonly type: TypeLetter;
  readonly nominalCelsius: number;
  readonly references: readonly EvaluatedReference[];
  readonly referenceCelsius: number;
  /** Nominal minus reference temperature, °C: the part carried over to the nominal. */
  readonly carriedCelsius: number;
  readonly readings: number;
  readonly indicatedMicrovolt: number;
  /** emf at the nominal temperature, reference junction at 0 °C, µV. */
  readonly emfAtNominalMicrovolt: number;
  readonly tableMicrovolt: number;
  /** emf at the nominal minus the reference function, µV. */
  readonly deviationMicrovolt: number;
  /** Error in °C: indication minus reference; correction = −error. */
  readonly errorCelsius: number;
  readonly seebeckMicrovoltPerCelsius: number;
  readonly temperatureBudget: Budget;
  readonly emfBudget: Budget;
  readonly combinedMicrovolt: number;
  readonly degreesOfFreedom: number | null;
  readonly coverageFactor: number;
  readonly expandedMicrovolt: number;
  readonly expandedCelsius: number;
  /** Key of the largest line, sensor and temperature stages taken together. */
  readonly dominant: string;
  readonly conformity: EvaluatedConformity;
  readonly printed: {
    readonly nominalCelsius: string;
    readonly referenceCelsius: string;
    readonly emfMicrovolt: string;
    readonly deviationMicrovolt: string;
    readonly expandedMicrovolt: string;
    readonly errorCelsius: string;
    readonly correctionCelsius: string;
    readonly expandedCelsius: string;
    readonly coverageFactor: string;
    readonly degreesOfFreedom: string;
  };
};

export type UnmeasuredPoint = {
  readonly state: "invalid" | "not-reached";
  readonly sensor: string;
  readonly setpoint: string;
  readonly type: TypeLetter;
  readonly nominalCelsius: number;
  readonly reason: string;
};

export type EvaluatedPoint = MeasuredPoint | UnmeasuredPoint;

/** Something a person must look at; it does not stop the evaluation. */
export type EvidenceFinding = {
  readonly code: string;
  readonly path: string;
  readonly message: string;
};

export type Evaluation = {
  readonly engineVersion: string;
  readonly points: readonly EvaluatedPoint[];
  readonly findings: readonly EvidenceFinding[];
};

/** Why an evidence file cannot be evaluated: where in the file, what, and the remedy. */
export type EvidenceProblem = {
  readonly path: string;
  readonly message: string;
};

export type EvaluationOutcome =
  | { readonly ok: true; readonly evaluation: Evaluation }
  | { readonly ok: false; readonly problems: readonly EvidenceProblem[] };
