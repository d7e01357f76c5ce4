import type { ParticularsOf } from "./particulars";

export const equipmentKinds = ["reference", "voltmeter", "scanner", "junction"] as const;
export type EquipmentKind = (typeof equipmentKinds)[number];

export const equipmentStates = ["in-service", "suspect", "retired"] as const;
export type EquipmentState = (typeof equipmentStates)[number];

type Recorded = {
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
  readonly [P in K]: Recorded & { readonly kind: P; readonly particulars: ParticularsOf<P> };
}[K];

/** As stored: `particulars` is JSON text. */
export type StoredEquipment = Omit<Recorded, "state"> & {
  readonly kind: string;
  readonly state: string;
  readonly particulars: string;
};
