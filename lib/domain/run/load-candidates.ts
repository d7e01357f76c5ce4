import type { ServiceFinding } from "../equipment/service-problem";
import type { EquipmentKind, EquipmentState } from "../equipment/types";
import type { ReferenceType, TypeLetter } from "../evidence/schema";
import type { Characterisation } from "../furnace/types";
import type { SetKind } from "../parts/decide-set";

/** What the rules of a furnace load need to know of each thing; loaded by `lib/data/run`, decided upon here. */

export type Protection = "bare-wire" | "alumina-sheath" | "metal-sheath" | "other";

export type SensorCandidate = {
  readonly id: string;
  readonly tag: string;
  readonly customerId: string;
  readonly type: TypeLetter;
  readonly protection: Protection;
  readonly state: string;
  readonly orderNumber: string;
  readonly orderState: string;
  /** Whom its line is subcontracted to; null = done here. */
  readonly providerName: string | null;
  /** Ascending. */
  readonly orderedCelsius: readonly number[];
  /** Highest exposure that was agreed; null = the highest setpoint ordered. */
  readonly maximumCelsius: number | null;
  /** The set of results it is measured for next; null: it has to be annealed first. */
  readonly nextSet: SetKind | null;
};

/** The calibration a run would stand on, with all that keeps it from being chosen. */
export type CandidateCalibration = {
  readonly certificate: string;
  readonly performedOn: string;
  readonly dueOn: string;
  readonly issuer: string;
  /** Approved now, for the kind, on the day it was performed; or calibrated in house. */
  readonly isIssuerApproved: boolean;
  /** Accepted when the run was made, and rejected since. */
  readonly isRejected: boolean;
};

/** `calibration`: accepted, and in force on the day; null where none is. `waiting`: a certificate nobody accepted yet. */
export type EquipmentCandidate = {
  readonly id: string;
  readonly tag: string;
  readonly kind: EquipmentKind;
  readonly state: EquipmentState;
  /** What its logbook says against it; what the laboratory makes of that is its policy. */
  readonly service: readonly ServiceFinding[];
  readonly calibration: CandidateCalibration | null;
  readonly waiting: string | null;
};

export type ReferenceCandidate = EquipmentCandidate & {
  readonly type: ReferenceType;
  readonly protection: Protection;
  /** Where its certificate gives a deviation, °C. */
  readonly range: { readonly fromCelsius: number; readonly toCelsius: number } | null;
};

export type JunctionCandidate = EquipmentCandidate & { readonly celsius: number };

/** For sensors of one type only: what it is made of is matched to them. */
export type LeadCandidate = EquipmentCandidate & { readonly type: TypeLetter };

export type ConfigurationCandidate = {
  readonly id: string;
  readonly name: string;
  readonly kind: "bare-tube" | "equalising-block";
  readonly places: number;
  readonly minimumCelsius: number;
  readonly maximumCelsius: number;
  /** Why its furnace cannot be used on the day: its state or its logbook; null = nothing. */
  readonly furnaceProblem: ServiceFinding | null;
  /** Accepted, and the newest on the day; null where none is. */
  readonly characterisation: Pick<Characterisation, "performedOn" | "validUntil" | "figures"> | null;
};

export type LoadCandidates = {
  readonly configuration: ConfigurationCandidate | null;
  readonly voltmeter: EquipmentCandidate | null;
  readonly scanner: EquipmentCandidate | null;
  readonly sensors: readonly SensorCandidate[];
  readonly references: readonly ReferenceCandidate[];
  readonly junctions: readonly JunctionCandidate[];
  readonly leads: readonly LeadCandidate[];
};
