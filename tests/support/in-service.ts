import { inScope, type Tx } from "@/lib/data/in-scope";
import type { Actor } from "@/lib/domain/staff/actor";
import { changeEquipment } from "@/lib/operations/equipment/change";
import { recordEntry } from "@/lib/operations/equipment/record-entry";
import { setEquipmentState } from "@/lib/operations/equipment/set-state";
import { execute } from "@/lib/operations/execute";

/** What a record must hold before its equipment may serve. */
export const wholeRecord = {
  firmware: "none",
  location: "Bench 1 (invented)",
  receivedOn: "2025-06-01",
  calibrationIntervalMonths: 12,
  requirement: { largestExpanded: 100, unit: "celsius" },
} as const;

/** Verified and put into service as people do it; for equipment that was just recorded. */
export const inService = async (manager: Actor, id: string, clock: () => Date): Promise<void> => {
  const happenedOn = clock().toISOString().slice(0, 10);
  const verification = {
    id,
    happenedOn,
    outcome: "passed" as const,
    summary: "Looked at on receipt (invented).",
    figures: { kind: "verification" as const, against: "its order (invented)" },
  };
  await execute(recordEntry, manager, verification, clock);
  const { version } = await inScope({ kind: "laboratory" }, (tx) =>
    tx.equipment.findUniqueOrThrow({ where: { id }, select: { version: true } }),
  );
  await execute(
    setEquipmentState,
    manager,
    { id, version, state: "in-service", reason: "verified (invented)" },
    clock,
  );
};

/** Out of service at once. */
export const suspect = async (manager: Actor, id: string, clock: () => Date): Promise<void> => {
  const { version } = await inScope({ kind: "laboratory" }, (tx) =>
    tx.equipment.findUniqueOrThrow({ where: { id }, select: { version: true } }),
  );
  await execute(setEquipmentState, manager, { id, version, state: "suspect", reason: "fell" }, clock);
};

/** The same, row by row, for worlds that are written so. */
export const inServiceRow = async (
  tx: Tx,
  equipmentId: string,
  recordedById: string,
  day = "2026-01-14",
): Promise<void> => {
  await tx.equipmentEntry.create({
    data: {
      equipmentId,
      kind: "verification",
      happenedOn: new Date(day),
      outcome: "passed",
      summary: "Looked at on receipt, invented",
      figures: JSON.stringify({ kind: "verification", against: "its order, invented" }),
      recordedById,
      recordedAt: new Date(`${day}T08:00:00Z`),
    },
  });
  for (const state of ["verified", "in-service"])
    await tx.equipment.update({ where: { id: equipmentId }, data: { state } });
};

/** A furnace's row among the equipment: its record made whole, then into service. */
export const furnaceInService = async (
  manager: Actor,
  furnaceId: string,
  clock: () => Date,
): Promise<void> => {
  const furnace = await inScope({ kind: "laboratory" }, (tx) =>
    tx.furnace.findUniqueOrThrow({ where: { id: furnaceId } }),
  );
  const id = furnace.equipmentId ?? "";
  const record = {
    id,
    version: 1,
    maker: furnace.maker,
    model: furnace.name,
    serial: furnace.serial,
    location: "Furnace room (invented)",
    receivedOn: "2025-06-01",
    maintenanceIntervalDays: 3650,
    particulars: { kind: "furnace" as const },
  };
  await execute(changeEquipment, manager, record, clock);
  await inService(manager, id, clock);
};

/** Out of service, row by row. */
export const suspectRow = async (tx: Tx, equipmentId: string, day: string): Promise<void> => {
  await tx.equipmentEntry.create({
    data: {
      equipmentId,
      kind: "damage",
      happenedOn: new Date(day),
      summary: "fell, invented",
      figures: JSON.stringify({ kind: "damage" }),
      recordedAt: new Date(`${day}T08:00:00Z`),
    },
  });
  await tx.equipment.update({ where: { id: equipmentId }, data: { state: "suspect" } });
};

/** A furnace's own row among the equipment, in service, for worlds that are written row by row. */
export const furnaceRow = async (tx: Tx, tag: string, recordedById: string): Promise<string> => {
  const { id } = await tx.equipment.create({
    data: {
      tag,
      kind: "furnace",
      maker: "Invented Works",
      model: "",
      serial: tag,
      particulars: '{"kind":"furnace"}',
    },
  });
  await inServiceRow(tx, id, recordedById);
  return id;
};
