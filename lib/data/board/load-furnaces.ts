import type { Tx } from "@/lib/data/in-scope";
import { loadFurnaceLoad } from "@/lib/data/promise/furnace-load";
import type { PromisePolicy } from "@/lib/domain/promise/policy";

/** The furnaces that are not retired, what each is taken for from a moment on, and what is measured or planned in it. */
export const loadFurnaceBoard = async (tx: Tx, from: Date, now: Date, policy: PromisePolicy) => {
  const furnaces = await tx.furnace.findMany({
    orderBy: { tag: "asc" },
    select: { id: true, tag: true, name: true, equipmentId: true },
  });
  const retired = await tx.equipment.findMany({
    where: { kind: "furnace", state: "retired" },
    select: { id: true },
  });
  const gone = new Set(retired.map(({ id }) => id));
  const { reserved, placed } = await loadFurnaceLoad(tx, from, now, policy);
  return furnaces
    .filter(({ equipmentId }) => equipmentId === null || !gone.has(equipmentId))
    .map(({ id, tag, name }) => ({
      ...{ id, tag, name },
      reserved: reserved.filter(({ furnaceId }) => furnaceId === id),
      placed: placed.filter(({ work }) => work.furnaceId === id),
    }));
};

export type FurnaceBoard = Awaited<ReturnType<typeof loadFurnaceBoard>>;
