import type { Tx } from "@/lib/data/in-scope";

/** The furnaces that are not retired, the runs that are in work in each, and for what each is taken in these days. */
export const loadFurnaceBoard = async (tx: Tx, from: Date, until: Date) => {
  const furnaces = await tx.furnace.findMany({
    orderBy: { tag: "asc" },
    select: { id: true, tag: true, name: true, equipmentId: true, configurations: { select: { id: true } } },
  });
  const retired = await tx.equipment.findMany({
    where: { kind: "furnace", state: "retired" },
    select: { id: true },
  });
  const gone = new Set(retired.map(({ id }) => id));
  const runs = await tx.run.findMany({
    where: { state: { in: ["planned", "measuring"] } },
    orderBy: [{ createdAt: "asc" }, { id: "asc" }],
    take: 100,
    select: {
      id: true,
      number: true,
      state: true,
      configurationId: true,
      createdAt: true,
      startedAt: true,
      setpoints: { select: { celsius: true } },
    },
  });
  // Counted for these runs alone: counted with the runs, it would be for every run there ever was.
  const loaded = await tx.loadPlace.groupBy({
    by: ["runId"],
    where: { runId: { in: runs.map(({ id }) => id) }, kind: "sensor" },
    _count: true,
  });
  const sensorsOf = new Map(loaded.map(({ runId, _count }) => [runId, _count]));
  const slots = await tx.furnaceSlot.findMany({
    where: { isReleased: false, endsAt: { gt: from }, startsAt: { lt: until } },
    orderBy: { startsAt: "asc" },
    take: 500,
  });
  const orders = await tx.order.findMany({
    where: { id: { in: [...new Set(slots.flatMap(({ orderId }) => (orderId ? [orderId] : [])))] } },
    select: { id: true, number: true, customer: { select: { name: true } } },
  });
  const ofSlots = await tx.run.findMany({
    where: { id: { in: [...new Set(slots.flatMap(({ runId }) => (runId ? [runId] : [])))] } },
    select: { id: true, number: true },
  });
  const orderById = new Map(orders.map((order) => [order.id, order]));
  const runById = new Map(ofSlots.map((run) => [run.id, run]));
  return furnaces
    .filter(({ equipmentId }) => equipmentId === null || !gone.has(equipmentId))
    .map(({ id, tag, name, configurations }) => ({
      id,
      tag,
      name,
      runs: runs
        .filter((run) => configurations.some((one) => one.id === run.configurationId))
        .map((run) => ({ ...run, sensors: sensorsOf.get(run.id) ?? 0 })),
      slots: slots
        .filter((slot) => slot.furnaceId === id)
        .map((slot) => ({
          id: slot.id,
          startsAt: slot.startsAt,
          endsAt: slot.endsAt,
          note: slot.note,
          order: slot.orderId ? (orderById.get(slot.orderId) ?? null) : null,
          run: slot.runId ? (runById.get(slot.runId) ?? null) : null,
        })),
    }));
};

export type FurnaceBoard = Awaited<ReturnType<typeof loadFurnaceBoard>>;
