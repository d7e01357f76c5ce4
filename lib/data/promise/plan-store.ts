import { loadFurnaceProblem } from "@/lib/data/equipment/furnace-problem";
import { type AsideSensors, asideSensors } from "@/lib/data/hold/aside-sensors";
import type { Tx } from "@/lib/data/in-scope";
import { isoDay } from "@/lib/domain/calibration/due";
import { readLineOptions } from "@/lib/domain/order/options";
import type { PlannedFurnace, PlannedGroup } from "@/lib/domain/promise/furnace-hours";
import type { PromisePolicy } from "@/lib/domain/promise/policy";
import type { PlannedOrder, ProposedSlot, Taken } from "@/lib/domain/promise/propose-promise";
import { loadFurnaceLoad, loadReservations } from "./furnace-load";

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
  id: true,
  number: true,
  urgency: true,
  acceptedAt: true,
  recordedAt: true,
  lines: {
    orderBy: { position: "asc" },
    select: {
      ...{ quantity: true, options: true, performedAt: true, providerId: true },
      setpoints: { orderBy: { position: "asc" }, select: { celsius: true } },
      sensors: { select: { id: true, customerId: true, state: true } },
    },
  },
} as const;

type Row = NonNullable<Awaited<ReturnType<typeof findPlanned>>>;
const findPlanned = (tx: Tx, number: string) => tx.order.findUnique({ where: { number }, select: planned });

/** Of sensors that are measured twice: how often each was in a run that was not abandoned, or is in one. */
const loadedSets = async (tx: Tx, rows: readonly Row[]): Promise<ReadonlyMap<string, number>> => {
  const twice = rows.flatMap(({ lines }) =>
    lines.flatMap(({ options, sensors }) => (readLineOptions(options).sets === "both" ? sensors : [])),
  );
  if (twice.length === 0) return new Map();
  const places = await tx.loadPlace.findMany({
    where: {
      customerId: { in: [...new Set(twice.map(({ customerId }) => customerId))] },
      sensorId: { in: twice.map(({ id }) => id) },
      run: { state: { not: "abandoned" } },
    },
    distinct: ["sensorId", "setKind"],
    select: { sensorId: true },
  });
  const counts = new Map<string, number>();
  for (const { sensorId } of places)
    if (sensorId !== null) counts.set(sensorId, (counts.get(sensorId) ?? 0) + 1);
  return counts;
};

type Line = Row["lines"][number];

/** What of a line waits: not what is in a furnace or was in one, a second set of results besides. */
const waitingOf = (line: Line, loaded: ReadonlyMap<string, number>): readonly PlannedGroup[] => {
  const setpointsCelsius = line.setpoints.map(({ celsius }) => celsius);
  if (readLineOptions(line.options).sets !== "both") {
    const gone = line.sensors.filter(({ state }) => state !== "received").length;
    return [{ setpointsCelsius, sensors: line.quantity - gone, sets: 1 }];
  }
  const done = ({ id, state }: Line["sensors"][number]): number =>
    state === "issued" || state === "collected" ? 2 : Math.min(2, loaded.get(id) ?? 0);
  const times = line.sensors.map(done);
  return [
    { setpointsCelsius, sensors: line.quantity - times.filter((count) => count > 0).length, sets: 2 },
    { setpointsCelsius, sensors: times.filter((count) => count === 1).length, sets: 1 },
  ];
};

/** As far as the furnace is concerned: what goes back unmeasured is over, and what another replaces was never there. */
const withoutAside = (line: Line, { replaced, goingBack }: AsideSensors): Line => ({
  ...line,
  sensors: line.sensors
    .filter(({ id }) => !replaced.has(id))
    .map((sensor) => (goingBack.has(sensor.id) ? { ...sensor, state: "collected" } : sensor)),
});

const ordersOf = async (tx: Tx, rows: readonly Row[]): Promise<readonly PlannedOrder[]> => {
  const aside = await asideSensors(
    tx,
    rows.map(({ id }) => id),
    rows.flatMap(({ lines }) => lines.flatMap(({ sensors }) => sensors)),
  );
  const loaded = await loadedSets(tx, rows);
  return rows.map((row) => ({
    number: row.number,
    urgency: row.urgency === "express" ? "express" : "standard",
    since: (row.acceptedAt ?? row.recordedAt).getTime(),
    groups: row.lines
      // Not what is measured elsewhere.
      .filter(({ performedAt, providerId }) => performedAt === "laboratory" && providerId === null)
      .flatMap((line) => waitingOf(withoutAside(line, aside), loaded))
      .filter(({ sensors, setpointsCelsius }) => sensors > 0 && setpointsCelsius.length > 0),
  }));
};

export const loadPlannedOrder = async (tx: Tx, number: string): Promise<PlannedOrder | null> => {
  const row = await findPlanned(tx, number);
  return row && ((await ordersOf(tx, [row]))[0] ?? null);
};

/** Accepted orders nobody promised a day for, as far as they wait for a furnace. */
export const loadWaitingOrders = async (tx: Tx): Promise<readonly PlannedOrder[]> => {
  const rows = await tx.order.findMany({
    where: { state: "accepted", promisedOn: null },
    orderBy: [{ acceptedAt: "asc" }, { number: "asc" }],
    select: planned,
  });
  return (await ordersOf(tx, rows)).filter(({ groups }) => groups.length > 0);
};

/** Hours that are taken and not over, reserved for another order than this one or of a run, each with whose they are. */
export const loadTaken = async (
  tx: Tx,
  now: Date,
  policy: PromisePolicy,
  exceptOrderId: string,
): Promise<readonly Taken[]> => {
  const { reserved, placed } = await loadFurnaceLoad(tx, now, now, policy);
  return [
    ...reserved
      .filter(({ orderId }) => orderId !== exceptOrderId)
      .map(({ furnaceId, startsAt, endsAt, order }) => ({ furnaceId, startsAt, endsAt, of: order ?? "" })),
    ...placed.map(({ work, hours }) => ({ ...hours, of: work.number, orders: work.orders })),
  ];
};

/** Gives back hours whose sensors are in a run: the database would still refuse them to others. */
export const releaseUsedUp = async (tx: Tx, now: Date): Promise<void> => {
  const { usedUp } = await loadReservations(tx, now);
  await tx.furnaceSlot.updateMany({
    where: { id: { in: usedUp }, isReleased: false },
    data: { isReleased: true, version: { increment: 1 } },
  });
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
