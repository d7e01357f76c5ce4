import type { EquipmentKind, EquipmentState } from "./types";

export const equipmentKindLabels: Readonly<Record<EquipmentKind, string>> = {
  reference: "Reference thermocouple",
  voltmeter: "Voltmeter",
  scanner: "Scanner",
  junction: "Reference junction",
};

export const equipmentStateLabels: Readonly<Record<EquipmentState, string>> = {
  "in-service": "In service",
  suspect: "Suspect: not to be used",
  retired: "Retired",
};

export const protectionLabels: Readonly<Record<string, string>> = {
  "bare-wire": "Bare wires",
  "alumina-sheath": "Closed alumina sheath",
  "metal-sheath": "Metal sheath",
  other: "Other",
};
