import { loadFurnaceProblem } from "@/lib/data/equipment/furnace-problem";
import type { Tx } from "@/lib/data/in-scope";
import { isoDay } from "@/lib/domain/calibration/due";
import { readLineOptions } from "@/lib/domain/order/options";
import type { PlannedFurnace, PlannedGroup } from "@/lib/domain/promise/furnace-hours";
import type { PlannedOrder, ProposedSlot, Taken } from "@/lib/domain/promise/propose-promise";

/** Furnaces that may be used, each with its roomiest configuration. */
export const loadPlannedFurnaces = async (tx: Tx, now: Date): Promise<readonly PlannedFurnace[]> => {
  const rows = await tx.furnace.findMany({
    orderBy: { tag: "asc" },
    include: { configurations: { select: { places: true } } },
  });
  const usable: PlannedFurnace[] = [];
  for (const row of rows)
    if ((await loadFurnaceProblem(tx, row.equipmentId, isoDay(now))) === null)
      usable.push({
        ...{ id: row.id, tag: row.tag, name: row.name },
        ...{ minimumCelsius: row.minimumCelsius, maximumCelsius: row.maximumCelsius },
        rampUpCelsiusPerHour: row.rampUpCelsiusPerHour,
        rampDownCelsiusPerHour: row.rampDownCelsiusPerHour,
        places: Math.max(1, ...row.configurations.map(({ places }) => places)),
      });
  return usable;
};

const planned = {
  number: true,
  urgency: true,
  acceptedAt: true,
  recordedAt: true,
  lines: {
    orderBy: { position: "asc" },
    select: {
      ...{ quantity: true, options: true, performedAt: true, providerId: true },
      setpoints: { orderBy: { position: "asc" }, select: { celsius: true } },
      sensors: { select: { state: true } },
    },
  },
} as const;

type Row = NonNullable<Awaited<ReturnType<typeof findPlanned>>>;
const findPlanned = (tx: Tx, number: string) => tx.order.findUnique({ where: { number }, select: planned });

/** What still waits for a furnace of the laboratory: not what is in one, is done, or is measured elsewhere. */
const groupsOf = (row: Row): readonly PlannedGroup[] =>
  row.lines
    .filter(({ performedAt, providerId }) => performedAt === "laboratory" && providerId === null)
    .map((line) => ({
      setpointsCelsius: line.setpoints.map(({ celsius }) => celsius),
      sensors: line.quantity - line.sensors.filter(({ state }) => state !== "received").length,
      sets: readLineOptions(line.options).sets === "both" ? (2 as const) : (1 as const),
    }))
    .filter(({ sensors, setpointsCelsius }) => sensors > 0 && setpointsCelsius.length > 0);

const orderOf = (row: Row): PlannedOrder => ({
  number: row.number,
  urgency: row.urgency === "express" ? "express" : "standard",
  since: (row.acceptedAt ?? row.recordedAt).getTime(),
  groups: groupsOf(row),
});

export const loadPlannedOrder = async (tx: Tx, number: string): Promise<PlannedOrder | null> => {
  const row = await findPlanned(tx, number);
  return row && orderOf(row);
};

/** Accepted orders nobody promised a day for, as far as they wait for a furnace. */
export const loadWaitingOrders = async (tx: Tx): Promise<readonly PlannedOrder[]> => {
  const rows = await tx.order.findMany({
    where: { state: "accepted", promisedOn: null },
    orderBy: [{ acceptedAt: "asc" }, { number: "asc" }],
    select: planned,
  });
  return rows.map(orderOf).filter(({ groups }) => groups.length > 0);
};

/** Hours that are taken and not over, of an order other than this one, each with whose they are. */
export const loadTaken = async (
  tx: Tx,
  now: Date,
  exceptOrderId: string | null,
): Promise<readonly Taken[]> => {
  const rows = await tx.furnaceSlot.findMany({
    where: { isReleased: false, endsAt: { gt: now } },
    orderBy: [{ startsAt: "asc" }, { id: "asc" }],
  });
  const ids = (of: (row: (typeof rows)[number]) => string | null) => rows.flatMap((row) => of(row) ?? []);
  const numbered = { id: true, number: true } as const;
  const named = [
    ...(await tx.order.findMany({ where: { id: { in: ids((row) => row.orderId) } }, select: numbered })),
    ...(await tx.run.findMany({ where: { id: { in: ids((row) => row.runId) } }, select: numbered })),
  ];
  const numbers = new Map(named.map(({ id, number }) => [id, number]));
  return rows
    .filter(({ orderId }) => orderId === null || orderId !== exceptOrderId)
    .map((row) => ({
      of: numbers.get(row.orderId ?? row.runId ?? "") ?? "",
      furnaceId: row.furnaceId,
      startsAt: row.startsAt.getTime(),
      endsAt: row.endsAt.getTime(),
    }));
};

/** Gives back the hours of orders that are cancelled or complete, and those this one had. */
export const releaseSlots = async (tx: Tx, orderId: string): Promise<void> => {
  const slots = await tx.furnaceSlot.findMany({
    where: { isReleased: false, orderId: { not: null } },
    select: { id: true, orderId: true },
  });
  const over = await tx.order.findMany({
    where: {
      id: { in: slots.flatMap(({ orderId: of }) => of ?? []) },
      OR: [{ state: { in: ["cancelled", "completed"] } }, { id: orderId }],
    },
    select: { id: true },
  });
  await tx.furnaceSlot.updateMany({
    where: { isReleased: false, orderId: { in: over.map(({ id }) => id) } },
    data: { isReleased: true, version: { increment: 1 } },
  });
};

export const takeSlots = async (
  tx: Tx,
  orderId: string,
  slots: readonly ProposedSlot[],
  taken: { readonly takenById: string; readonly takenAt: Date },
): Promise<void> => {
  // One by one: the database judges each against those there are.
  for (const { furnaceId, startsAt, endsAt, sensors } of slots)
    await tx.furnaceSlot.create({
      data: {
        ...{ furnaceId, orderId, ...taken },
        startsAt: new Date(startsAt),
        endsAt: new Date(endsAt),
        note: `${sensors} ${sensors === 1 ? "sensor" : "sensors"}`,
      },
    });
};

export const savePromise = async (
  tx: Tx,
  orderId: string,
  promisedOn: string,
  basis: string,
): Promise<void> => {
  await tx.order.update({
    where: { id: orderId },
    data: { promisedOn: new Date(promisedOn), promiseBasis: basis, version: { increment: 1 } },
  });
};
