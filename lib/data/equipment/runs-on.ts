import { isoDay } from "@/lib/domain/calibration/due";
import type { Tx } from "../in-scope";

export type RunOn = { readonly number: string; readonly state: string; readonly on: string };

/** Runs made on or after a day that stand on a piece of equipment, in whatever part; of a furnace, those made in it. */
export const loadRunsOn = async (
  tx: Tx,
  equipmentId: string,
  since: string | null,
): Promise<readonly RunOn[]> => {
  const configurations = await tx.furnaceConfiguration.findMany({
    where: { furnace: { equipmentId } },
    select: { id: true },
  });
  const rows = await tx.run.findMany({
    where: {
      ...(since === null ? {} : { createdAt: { gte: new Date(`${since}T00:00:00Z`) } }),
      OR: [
        { voltmeterId: equipmentId },
        { scannerId: equipmentId },
        { ambientId: equipmentId },
        { configurationId: { in: configurations.map(({ id }) => id) } },
        { places: { some: { OR: [{ equipmentId }, { junctionId: equipmentId }, { leadId: equipmentId }] } } },
      ],
    },
    select: { number: true, state: true, startedAt: true, createdAt: true },
    orderBy: { createdAt: "desc" },
  });
  return rows.map(({ number, state, startedAt, createdAt }) => ({
    number,
    state,
    on: isoDay(startedAt ?? createdAt),
  }));
};
