import type { Tx } from "@/lib/data/in-scope";
import { isEquipmentOf, readEquipment } from "@/lib/domain/equipment/read-equipment";
import { type ReferenceType, TypeLetter } from "@/lib/domain/evidence/schema";

export type Tested = {
  readonly sensorId: string | null;
  readonly customerId: string | null;
  readonly equipmentId: string | null;
  readonly type: ReferenceType;
};

/** The thermocouple a tag stands on: a customer's sensor or a reference of the laboratory. */
export const loadTested = async (tx: Tx, tag: string): Promise<Tested | null> => {
  const sensor = await tx.sensor.findUnique({ where: { tag } });
  if (sensor)
    return {
      sensorId: sensor.id,
      customerId: sensor.customerId,
      equipmentId: null,
      type: TypeLetter.parse(sensor.typeLetter),
    };
  const row = await tx.equipment.findUnique({ where: { tag } });
  const equipment = row && readEquipment(row);
  return equipment && isEquipmentOf(equipment, "reference")
    ? { sensorId: null, customerId: null, equipmentId: equipment.id, type: equipment.particulars.type }
    : null;
};

export const tagOfTested = async (
  tx: Tx,
  { sensorId, equipmentId }: { readonly sensorId: string | null; readonly equipmentId: string | null },
): Promise<string> => {
  const found = sensorId
    ? await tx.sensor.findUnique({ where: { id: sensorId }, select: { tag: true } })
    : await tx.equipment.findUnique({ where: { id: equipmentId ?? "" }, select: { tag: true } });
  return found?.tag ?? "";
};

/** The type of what was tested; it must still be there, as nothing tested is ever removed. */
export const loadTypeOf = async (
  tx: Tx,
  tested: { readonly sensorId: string | null; readonly equipmentId: string | null },
): Promise<Tested["type"]> => {
  const found = await loadTested(tx, await tagOfTested(tx, tested));
  if (!found) throw new Error("what was tested is not there");
  return found.type;
};
