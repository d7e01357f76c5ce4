import { Particulars } from "./particulars";
import { readRequirement } from "./requirement";
import { type Equipment, type EquipmentKind, equipmentStates, type StoredEquipment } from "./types";

/** A stored row read back into its kind. It was judged when it was written, so a misfit is a defect and throws. */
export const readEquipment = (row: StoredEquipment): Equipment => {
  const particulars = Particulars.parse(JSON.parse(row.particulars));
  const state = equipmentStates.find((known) => known === row.state);
  if (particulars.kind !== row.kind || !state)
    throw new Error(
      `equipment ${row.tag} is stored as ${row.kind}, ${row.state}, which its particulars deny`,
    );
  return {
    id: row.id,
    tag: row.tag,
    kind: particulars.kind,
    maker: row.maker,
    model: row.model,
    serial: row.serial,
    state,
    firmware: row.firmware,
    location: row.location,
    receivedOn: row.receivedOn?.toISOString().slice(0, 10) ?? null,
    calibrationIntervalMonths: row.calibrationIntervalMonths,
    checkIntervalDays: row.checkIntervalDays,
    maintenanceIntervalDays: row.maintenanceIntervalDays,
    requirement: readRequirement(row.requirement),
    particulars,
    version: row.version,
  } as Equipment;
};

export const isEquipmentOf = <K extends EquipmentKind>(
  equipment: Equipment,
  kind: K,
): equipment is Extract<Equipment, { kind: K }> => equipment.kind === kind;
