/** Temperatures of one reference over a run; both arrays of one length, seconds ascending. */
export type ReferenceSeries = {
  readonly id: string;
  readonly seconds: ArrayLike<number>;
  readonly celsius: ArrayLike<number>;
};

export type StabilityCriterion = {
  readonly minimumSeconds: number;
  /** Limit of |slope| × length, °C: how far the furnace drifts from one end of the window to the other. */
  readonly slopeTimesLengthCelsius: number;
  /** Limit of the references' difference, °C: U of that difference. */
  readonly agreementCelsius: number;
  /** Limit of the largest minus smallest reading of any reference, °C; without it the spread is shown, not judged. */
  readonly spreadCelsius?: number;
};

export type ReferenceInWindow = {
  readonly id: string;
  readonly readings: number;
  /** Value of its fitted line at the middle of the window. */
  readonly celsius: number;
  readonly slopeCelsiusPerMinute: number;
  /** Largest minus smallest reading. */
  readonly spreadCelsius: number;
};

export type WindowAssessment = {
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly lengthSeconds: number;
  /** Mean of the references at the middle of the window. */
  readonly meanCelsius: number;
  readonly slopeCelsiusPerMinute: number;
  readonly slopeTimesLengthCelsius: number;
  /** The largest spread of any reference. */
  readonly spreadCelsius: number;
  /** Largest minus smallest reference; null with one reference, where nothing can be compared. */
  readonly differenceCelsius: number | null;
  readonly references: readonly ReferenceInWindow[];
  readonly criterion: StabilityCriterion;
  readonly meets: boolean;
  /** Why it does not meet the criterion, one sentence each; empty when it does. */
  readonly reasons: readonly string[];
};

export type WindowProposal =
  | { readonly kind: "proposed"; readonly window: WindowAssessment }
  | { readonly kind: "none"; readonly reason: string };

/** A line through two readings fits any drift and any noise; three are the least that can show either. */
export const LEAST_READINGS = 3;
