import type { GateCode } from "./codes";
import type { GateHeading } from "./headings";
import type { OverrideRule } from "./policy";

/** refuse: nothing helps but mending it. overridable: mending, or a reason. warning: to be known. ok: met. */
export type GateSeverity = "refuse" | "overridable" | "warning" | "ok";

export type GateVerdict = "may-start" | "needs-reasons" | "refused";

/** A reason that stands against one row, as stored. */
export type GivenReason = {
  readonly code: string;
  readonly subject: string;
  readonly reason: string;
  readonly reachesCertificate: boolean;
  readonly saidAt: Date;
};

/** One line of a heading: one thing said of one or many subjects. */
export type GateRow = {
  readonly code: GateCode;
  readonly severity: GateSeverity;
  /** Sensors, references, equipment or channels it is said of; empty = the whole run. */
  readonly subjects: readonly string[];
  readonly reason: string;
  readonly remedy: string;
  readonly source: string;
  /** Who may set it aside, where anybody may. */
  readonly override: OverrideRule | null;
  /** The reason that sets it aside; null while nobody has given one. */
  readonly given: string | null;
  /** Accepted with this reason when this furnace configuration last passed the gate. */
  readonly asLastTime: { readonly run: string; readonly reason: string } | null;
};

export type AssessedHeading = {
  readonly heading: GateHeading;
  /** The gravest of its rows; a row with its reason given weighs as a warning. */
  readonly severity: GateSeverity;
  readonly rows: readonly GateRow[];
};

export type GateAssessment = {
  readonly headings: readonly AssessedHeading[];
  readonly verdict: GateVerdict;
};
