import type { EntryKind } from "./logbook";
import type { ServicePolicy } from "./service-policy";
import type { ServiceGround } from "./service-problem";
import type { EquipmentKind, EquipmentState } from "./types";

export const equipmentKindLabels: Readonly<Record<EquipmentKind, string>> = {
  reference: "Reference thermocouple",
  thermometer: "Platinum thermometer",
  voltmeter: "Voltmeter",
  scanner: "Scanner",
  junction: "Reference junction",
  lead: "Lead or compensating cable",
  ambient: "Ambient instrument",
  furnace: "Furnace",
};

/** Of several. */
export const equipmentKindHeadings: Readonly<Record<EquipmentKind, string>> = {
  reference: "Reference thermocouples",
  thermometer: "Platinum thermometers",
  voltmeter: "Voltmeters",
  scanner: "Scanners",
  junction: "Reference junctions",
  lead: "Leads and compensating cable",
  ambient: "Ambient instruments",
  furnace: "Furnaces",
};

export const equipmentStateLabels: Readonly<Record<EquipmentState, string>> = {
  received: "Received: not verified yet",
  verified: "Verified",
  "in-service": "In service",
  suspect: "Suspect: not to be used",
  "under-repair": "Under repair",
  retired: "Retired",
};

export const protectionLabels: Readonly<Record<string, string>> = {
  "bare-wire": "Bare wires",
  "alumina-sheath": "Closed alumina sheath",
  "metal-sheath": "Metal sheath",
  other: "Other",
};

export const entryKindLabels: Readonly<Record<EntryKind, string>> = {
  verification: "Verification",
  "intermediate-check": "Intermediate check",
  maintenance: "Maintenance",
  damage: "Damage or malfunction",
  repair: "Repair",
  adjustment: "Adjustment",
  anneal: "Anneal",
  "check-after-anneal": "Check after anneal",
  move: "Move",
  note: "Note",
  label: "Label",
};

export const leadFormLabels: Readonly<Record<string, string>> = {
  extension: "Extension lead",
  compensating: "Compensating cable",
};

export const platinumElementLabels: Readonly<Record<string, string>> = {
  industrial: "Industrial, IEC 60751",
  sprt: "Standard (SPRT), ITS-90",
};

export const serviceGroundLabels: Readonly<Record<ServiceGround, string>> = {
  suspect: "Suspect",
  "not-in-service": "Not in service",
  "check-overdue": "Check overdue",
  "maintenance-overdue": "Maintenance overdue",
  "chart-breached": "Chart out of control",
  "anneal-unchecked": "Not checked since its anneal",
};

export const servicePolicyLabels: Readonly<Record<keyof ServicePolicy, string>> = {
  overdueCheck: "An intermediate check is overdue (6.4.10)",
  overdueMaintenance: "Planned maintenance is overdue (6.4.3)",
  chartBreach: "The last check breaks a rule of its chart (7.7.1)",
  uncheckedAnneal: "A reference was annealed and no check has passed since",
};
