import type { ParticularsOf } from "./particulars";
import type { Requirement } from "./requirement";

export const equipmentKinds = [
  "reference",
  "thermometer",
  "voltmeter",
  "scanner",
  "junction",
  "lead",
  "ambient",
  "furnace",
] as const;
export type EquipmentKind = (typeof equipmentKinds)[number];

/** A furnace is characterised, not calibrated; all others have certificates. */
export type CalibratedKind = Exclude<EquipmentKind, "furnace">;

export const equipmentStates = [
  "received",
  "verified",
  "in-service",
  "suspect",
  "under-repair",
  "retired",
] as const;
export type EquipmentState = (typeof equipmentStates)[number];

/** The record of ISO/IEC 17025 6.4.13 besides what its logbook and its calibrations say. Days are ISO text. */
export type EquipmentRecord = {
  readonly firmware: string;
  readonly location: string;
  readonly receivedOn: string | null;
  readonly calibrationIntervalMonths: number | null;
  readonly checkIntervalDays: number | null;
  readonly maintenanceIntervalDays: number | null;
  readonly requirement: Requirement;
};

type Identified = {
  readonly id: string;
  readonly tag: string;
  readonly maker: string;
  readonly model: string;
  readonly serial: string;
  readonly state: EquipmentState;
  readonly version: number;
};

/** A union over the kinds, so that an `Equipment<"junction">` is an `Equipment`. */
export type Equipment<K extends EquipmentKind = EquipmentKind> = {
  readonly [P in K]: Identified &
    EquipmentRecord & { readonly kind: P; readonly particulars: ParticularsOf<P> };
}[K];

/** As stored: `particulars` and `requirement` are JSON text, days midnight UTC. */
export type StoredEquipment = Omit<Identified, "state"> &
  Omit<EquipmentRecord, "receivedOn" | "requirement"> & {
    readonly kind: string;
    readonly state: string;
    readonly particulars: string;
    readonly receivedOn: Date | null;
    readonly requirement: string;
  };
