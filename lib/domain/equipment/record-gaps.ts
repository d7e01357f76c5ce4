import type { Equipment, EquipmentKind } from "./types";

type Field =
  | "receivedOn"
  | "location"
  | "firmware"
  | "calibrationIntervalMonths"
  | "requirement"
  | "maintenanceIntervalDays";

/** What the record of each kind must hold before it may serve, ISO/IEC 17025 6.4.13; what it may leave out is left out here. */
const required: Readonly<Record<EquipmentKind, readonly Field[]>> = {
  reference: ["receivedOn", "location", "calibrationIntervalMonths", "requirement"],
  thermometer: ["receivedOn", "location", "calibrationIntervalMonths", "requirement"],
  voltmeter: ["receivedOn", "location", "firmware", "calibrationIntervalMonths", "requirement"],
  scanner: ["receivedOn", "location", "firmware"],
  junction: ["receivedOn", "location"],
  lead: ["receivedOn", "location"],
  ambient: ["receivedOn", "location", "calibrationIntervalMonths", "requirement"],
  furnace: ["receivedOn", "location", "maintenanceIntervalDays"],
};

/** By its letter of 6.4.13. */
export const gapWords: Readonly<Record<Field, string>> = {
  receivedOn: "the day it was received (6.4.13 c)",
  location: "where it is (6.4.13 d)",
  firmware: "its firmware, or that it has none (6.4.13 a)",
  calibrationIntervalMonths: "its calibration interval (6.4.13 e)",
  requirement: "the largest U that is fit for its use (6.4.13 e)",
  maintenanceIntervalDays: "its maintenance interval (6.4.13 g)",
};

const isMissing = (equipment: Equipment, field: Field): boolean => {
  if (field === "requirement") return equipment.requirement.largestExpanded === undefined;
  const value = equipment[field];
  return value === null || value === "";
};

/** Fields its class needs and its record does not have. */
export const recordGaps = (equipment: Equipment): readonly Field[] =>
  required[equipment.kind].filter((field) => isMissing(equipment, field));
