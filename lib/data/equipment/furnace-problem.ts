import { readEquipment } from "@/lib/domain/equipment/read-equipment";
import { type ServiceFinding, serviceProblem } from "@/lib/domain/equipment/service-problem";
import { serviceStanding } from "@/lib/domain/equipment/service-standing";
import type { Tx } from "../in-scope";
import { readEntry } from "./logbook-store";
import { loadServicePolicy } from "./service-policy-store";

/** Why a furnace cannot be used on a day as far as its state and its logbook go, or null. */
export const loadFurnaceProblem = async (
  tx: Tx,
  equipmentId: string | null,
  day: string,
): Promise<ServiceFinding | null> => {
  if (equipmentId === null) return null;
  const { entries, ...row } = await tx.equipment.findUniqueOrThrow({
    where: { id: equipmentId },
    include: { entries: { orderBy: { id: "asc" } } },
  });
  const equipment = readEquipment(row);
  const standing = serviceStanding(equipment, entries.map(readEntry), null);
  const { policy } = await loadServicePolicy(tx);
  return serviceProblem({ ...equipment, standing }, policy, day);
};
