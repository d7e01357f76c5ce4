import type { ReferenceType, ToleranceRef, TypeLetter } from "../evidence/schema";
import type { EquipmentCandidate, Protection, ReferenceCandidate } from "../run/load-candidates";
import type { TipCheckSeen } from "../run/tip-check";
import type { SensorBuild } from "../sensor/build";

/** All that the gate's checks know of a run that is about to start; gathered by `lib/data`, judged here. */

export type GateSensor = {
  readonly tag: string;
  readonly type: TypeLetter;
  readonly protection: Protection;
  readonly orderNumber: string;
  readonly orderState: string;
  /** Whom its line is subcontracted to; null = done here. */
  readonly providerName: string | null;
  /** Ascending. */
  readonly orderedCelsius: readonly number[];
  /** Agreed highest exposure; null = the highest setpoint ordered. */
  readonly maximumCelsius: number | null;
  readonly use: { readonly fromCelsius: number; readonly toCelsius: number } | null;
  readonly largestIntervalCelsius: number | null;
  readonly intervalRule: string;
  readonly tolerance: ToleranceRef | null;
  readonly build: SensorBuild;
  /** What it has seen before this run, here or where it came from, as far as anybody knows. */
  readonly history: { readonly highestCelsius: number | null; readonly deepestMillimetre: number | null };
};

export type GatePlace = {
  readonly place: string;
  readonly channel: string;
  readonly kind: "sensor" | "reference" | "shorted";
  readonly tag: string | null;
  readonly type: ReferenceType | null;
  readonly junction: string;
  readonly junctionCelsius: number | null;
  readonly immersionMillimetre: number | null;
};

export type GateConfiguration = {
  readonly id: string;
  readonly name: string;
  readonly kind: "bare-tube" | "equalising-block";
  readonly places: number;
  readonly minimumCelsius: number;
  readonly maximumCelsius: number;
  /** To the point of best uniformity. */
  readonly immersionMillimetre: number;
  /** Clear bore of the tube. */
  readonly tubeMillimetre: number;
  /** Of a block, by the name of the place. */
  readonly bores: readonly { readonly place: string; readonly diameterMillimetre: number }[];
  /** Why its furnace cannot be used on the day: its state or its logbook; null = nothing. */
  readonly furnaceProblem: string | null;
  readonly characterisation: { readonly performedOn: string; readonly validUntil: string } | null;
};

/** Recorded at the bench on a day; the last of each kind and channel. */
export type BenchChecks = {
  readonly warmUpHours: number | null;
  readonly shortedZeroMicrovolt: number | null;
  readonly channels: readonly { readonly channel: string; readonly microvolt: number }[];
  readonly voltagePoint: { readonly appliedMicrovolt: number; readonly readMicrovolt: number } | null;
  readonly junctions: readonly {
    readonly junction: string;
    readonly statedCelsius: number;
    readonly thermometerCelsius: number;
    readonly thermometer: string;
  }[];
};

/** Another run that still measures with something of this one. */
export type OtherRun = {
  readonly run: string;
  readonly scanner: string;
  /** Names do not do: two furnaces may each have a bare tube. */
  readonly configurationId: string;
  readonly channels: readonly string[];
};

/** What was set aside with a reason when this furnace configuration last passed the gate. */
export type LastTime = {
  readonly run: string;
  readonly accepted: readonly { readonly code: string; readonly reason: string }[];
};

export type GatePlan = {
  readonly run: string;
  /** YYYY-MM-DD: the day of the run. */
  readonly day: string;
  /** In the order in which they are measured. */
  readonly setpointsCelsius: readonly number[];
  readonly configuration: GateConfiguration;
  readonly places: readonly GatePlace[];
  readonly sensors: readonly GateSensor[];
  readonly references: readonly ReferenceCandidate[];
  readonly voltmeter: EquipmentCandidate | null;
  readonly scanner: EquipmentCandidate | null;
  readonly junctions: readonly EquipmentCandidate[];
  /** Leads of the laboratory's that join sensors to their junctions. */
  readonly leads: readonly EquipmentCandidate[];
  readonly junctionThermometers: readonly {
    readonly tag: string;
    readonly state: string;
    readonly calibration: { readonly performedOn: string; readonly dueOn: string } | null;
  }[];
  /** Revision by name; null where the run keeps figures of its own. */
  readonly procedure: { readonly name: string; readonly state: "draft" | "current" | "withdrawn" } | null;
  readonly bench: BenchChecks;
  readonly tips: readonly { readonly place: string; readonly check: TipCheckSeen | null }[];
  readonly otherRuns: readonly OtherRun[];
  readonly lastTime: LastTime | null;
};
