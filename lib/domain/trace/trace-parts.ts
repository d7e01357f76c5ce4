import type { MeasuredPoint } from "../evidence/evaluation";

/** What the chain of one certificate is composed from: records that never change. */

/** A step behind a calibration, as its certificate states it. */
export type TraceParent = {
  readonly id: string;
  readonly position: number;
  readonly kind: "laboratory-standard" | "national-standard" | "fixed-point" | "si";
  readonly title: string;
  readonly identity: string;
  readonly issuer: string;
  readonly certificate: string;
  readonly route: string;
  readonly performedOn: string | null;
  readonly validUntil: string | null;
  readonly expanded: number | null;
  readonly unit: string;
  readonly coverageFactor: number | null;
  /** Position of the parent that stands on this one; null = the calibration itself does. */
  readonly below: number | null;
};

/** A result of the laboratory's own certificate, frozen before. */
export type TraceInHouseResult = {
  readonly recordId: string;
  readonly height: number;
  readonly celsius: number;
  readonly expandedCelsius: number;
  readonly coverageFactor: number;
};

export type TraceCalibration = {
  /** Null where the certificate names one that is not on record. */
  readonly id: string | null;
  readonly certificate: string;
  readonly issuer: string;
  readonly accreditation: string;
  readonly route: string;
  readonly performedOn: string;
  readonly dueOn: string;
  /** As stored; null where it is not on record. */
  readonly findings: unknown;
  readonly statement: string;
  readonly documentSha256: string | null;
  readonly parents: readonly TraceParent[];
  readonly inHouse: { readonly certificate: string; readonly results: readonly TraceInHouseResult[] } | null;
};

export type TraceRole = "reference" | "voltmeter" | "scanner" | "junction" | "thermometer" | "lead";

export type TraceEquipment = {
  /** Null where the certificate names one that is not on record. */
  readonly id: string | null;
  readonly tag: string;
  readonly kind: string;
  readonly description: string;
  readonly serial: string;
};

/** A standard or instrument as used. */
export type TraceStandard = {
  readonly role: TraceRole;
  readonly equipment: TraceEquipment;
  readonly calibration: TraceCalibration | null;
};

export type TraceParts = {
  readonly certificate: string;
  readonly issuer: string;
  readonly performedFrom: string;
  readonly performedTo: string;
  readonly sensor: string;
  readonly run: {
    readonly id: string;
    readonly number: string;
    readonly evaluationId: string;
    readonly furnace: string;
    readonly characterisedOn: string | null;
    readonly characterisedUntil: string | null;
  };
  readonly results: readonly {
    readonly id: string;
    readonly setpointId: string;
    readonly position: number;
    /** As ordered, with its unit. */
    readonly setpoint: string;
    readonly point: MeasuredPoint;
  }[];
  /** What every sensor of the run stands on. */
  readonly ofRun: readonly TraceStandard[];
  /** What only this sensor's channel stands on: its own junction, its lead. */
  readonly ofSensor: readonly TraceStandard[];
};
