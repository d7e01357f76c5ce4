import type { CorrectionRow, CorrectionTable } from "@/lib/metrology/deviation/correction-table";
import type { DeviationFunction } from "@/lib/metrology/deviation/deviation-function";
import type { PrintedCoefficients } from "@/lib/metrology/deviation/printed-coefficients";
import type { FunctionChoice } from "./function-choice";
import type { TypeLetter } from "./schema";

/** What `evaluateEvidence` returns: unrounded numbers, and the strings as printed. Rounded once, here. */

/**
 * One line of a budget. `effect` is signed: sensitivity × standard uncertainty, in the unit of its stage.
 * `input`: one thing that is stated. `stage`: the temperature budget as a whole. `covariance`: what meter
 * and junction share between both stages; its `variance` is negative where errors partly cancel, and its
 * effect is then −√|variance|, for reading only.
 */
export type EvaluatedContribution = {
  readonly kind: "input" | "stage" | "covariance";
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
  /** What it adds to the square of its budget's combined uncertainty: effect², but for a covariance. */
  readonly variance: number;
  /** Its part of the point's whole u_c², both stages taken together: 0.25 is a quarter. */
  readonly share: number;
  /** Keys of lines that cover the same thing; both above zero would count it twice. */
  readonly excludes: readonly string[];
  readonly source: string;
};

export type Budget = {
  readonly unit: "°C" | "µV";
  readonly contributions: readonly EvaluatedContribution[];
  readonly combined: number;
  readonly degreesOfFreedom: number | null;
};

/** Two lines of a budget, by their keys, and the correlation coefficient of their errors. */
export type SharedError = {
  readonly first: string;
  readonly second: string;
  readonly coefficient: number;
};

/** How k was found, and why in that way. */
export type EvaluatedCoverage = {
  /** What the evidence asks for: t for every budget, or dominant rectangles first. */
  readonly policy: "student" | "dominant" | "monte-carlo";
  readonly method: "student" | "one-dominant-rectangle" | "two-dominant-rectangles" | "monte-carlo";
  /** What U = k·u_c is meant to cover, 0.9545 for Student. */
  readonly probability: number;
  /** The criterion with its numbers, as a sentence. */
  readonly criterion: string;
};

/** Where the point stands against the laboratory's accredited scope, if the evidence states one. */
export type EvaluatedScope = {
  readonly state: "not-stated" | "inside" | "outside";
  /** Calibration and measurement capability at the point, °C; null outside a scope. */
  readonly capabilityCelsius: number | null;
  /** U as computed was smaller, and is printed as the capability. */
  readonly isRaised: boolean;
  readonly source: string | null;
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
  /**
   * Probability that the true error lies inside the tolerance, both limits (JCGM 106:2012, 7.4), with u = U/k of the U
   * that is reported; Student's t with the effective degrees of freedom (JCGM 101:2008, 6.4.9), normal where they are null.
   */
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
  /** Mean of the shorted channel in the window, taken off; 0 where none was. */
  readonly zeroMicrovolt: number;
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
  /** Pairs of lines that one error moves: what the row "Shared voltmeter and junction" comes from. */
  readonly shared: readonly SharedError[];
  readonly combinedMicrovolt: number;
  readonly degreesOfFreedom: number | null;
  readonly coverageFactor: number;
  readonly coverage: EvaluatedCoverage;
  readonly expandedMicrovolt: number;
  readonly expandedCelsius: number;
  /** Key of the largest line, sensor and temperature stages taken together. */
  readonly dominant: string;
  readonly conformity: EvaluatedConformity;
  readonly scope: EvaluatedScope;
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

/** A row of a correction table; its printed U is never below the capability where a scope is stated. */
export type ScopedRow = CorrectionRow & { readonly scope: EvaluatedScope };
export type ScopedTable = Omit<CorrectionTable, "rows"> & { readonly rows: readonly ScopedRow[] };

/** A sensor's deviation function with all that a document shows of it. */
export type EvaluatedFunction = {
  readonly sensor: string;
  readonly choice: FunctionChoice;
  /** k of the table's U: the largest of the points. */
  readonly coverageFactor: number;
  readonly fitted: DeviationFunction;
  readonly table: ScopedTable;
  readonly coefficients: PrintedCoefficients;
};

export type Evaluation = {
  readonly engineVersion: string;
  readonly points: readonly EvaluatedPoint[];
  /** Of the sensors that ask for one. */
  readonly functions: readonly EvaluatedFunction[];
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
