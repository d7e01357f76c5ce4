import type { Tx } from "../in-scope";

export type InDoubt = { readonly id: string; readonly tag: string; readonly state: string };

type Run = {
  readonly configurationId: string;
  readonly voltmeterId: string;
  readonly scannerId: string;
  readonly ambientId: string | null;
  readonly places: readonly {
    readonly equipmentId: string | null;
    readonly junctionId: string;
    readonly leadId: string | null;
  }[];
};

/** What a run stands on that is out of service now, its furnace included. */
export const loadInDoubt = async (tx: Tx, run: Run): Promise<readonly InDoubt[]> => {
  const configuration = await tx.furnaceConfiguration.findUnique({
    where: { id: run.configurationId },
    select: { furnace: { select: { equipmentId: true } } },
  });
  const ids = [
    run.voltmeterId,
    run.scannerId,
    run.ambientId,
    configuration?.furnace.equipmentId,
    ...run.places.flatMap(({ equipmentId, junctionId, leadId }) => [equipmentId, junctionId, leadId]),
  ].flatMap((id) => id ?? []);
  return tx.equipment.findMany({
    where: { id: { in: [...new Set(ids)] }, state: { in: ["suspect", "under-repair"] } },
    select: { id: true, tag: true, state: true },
    orderBy: { tag: "asc" },
  });
};
