import { canonical } from "@/lib/domain/audit/canonical";
import { OrderSnapshot } from "@/lib/domain/order/order-snapshot";
import type { Tx } from "../in-scope";

type NewChange = {
  readonly orderId: string;
  readonly customerId: string;
  readonly reason: string;
  readonly agreedWith: string;
  readonly before: OrderSnapshot;
  readonly after: OrderSnapshot;
  readonly changedById: string;
  readonly changedAt: Date;
};

/** Before the lines change: the database lets none of an accepted order change without it. Answers its number. */
export const insertChange = async (tx: Tx, change: NewChange): Promise<number> => {
  const sequence = (await tx.orderChange.count({ where: { orderId: change.orderId } })) + 1;
  const { before, after, ...row } = change;
  await tx.orderChange.create({
    data: { ...row, sequence, before: canonical(before), after: canonical(after) },
  });
  return sequence;
};

type Row = Awaited<ReturnType<Tx["orderChange"]["findMany"]>>[number];

const read = (row: Row) => ({
  ...row,
  before: OrderSnapshot.parse(JSON.parse(row.before)),
  after: OrderSnapshot.parse(JSON.parse(row.after)),
});
export type OrderChange = ReturnType<typeof read>;

export const loadChanges = async (tx: Tx, orderId: string): Promise<OrderChange[]> =>
  (await tx.orderChange.findMany({ where: { orderId }, orderBy: { sequence: "asc" } })).map(read);

/** Identity and number of each order with a sensor in this run. */
export const ordersInLoad = async (tx: Tx, runId: string) => {
  const places = await tx.loadPlace.findMany({
    where: { runId, sensorId: { not: null } },
    select: { sensorId: true },
  });
  const lines = await tx.orderLine.findMany({
    where: { sensors: { some: { id: { in: places.flatMap(({ sensorId }) => sensorId ?? []) } } } },
    select: { order: { select: { id: true, number: true } } },
  });
  return new Map(lines.map(({ order }) => [order.id, order.number]));
};

/** Changes since the run was made, of orders with a sensor in its load, that nobody has acknowledged for it. */
export const loadOpenChanges = async (
  tx: Tx,
  run: { readonly id: string; readonly createdAt: Date },
): Promise<readonly (OrderChange & { readonly changeId: string; readonly orderNumber: string })[]> => {
  const orders = await ordersInLoad(tx, run.id);
  const rows = await tx.orderChange.findMany({
    where: { orderId: { in: [...orders.keys()] }, changedAt: { gte: run.createdAt } },
    orderBy: [{ changedAt: "asc" }, { sequence: "asc" }],
  });
  const known = await tx.orderChangeAcknowledgment.findMany({
    where: { runId: run.id, changeId: { in: rows.map(({ id }) => id) } },
    select: { changeId: true },
  });
  return rows
    .filter(({ id }) => !known.some(({ changeId }) => changeId === id))
    .map((row) => ({ ...read(row), changeId: row.id, orderNumber: orders.get(row.orderId) ?? "" }));
};

/** Runs that lie with a technician and have a sensor of this order in their load. */
export const openRunsWith = async (tx: Tx, sensorIds: readonly string[]): Promise<readonly string[]> => {
  const runs = await tx.run.findMany({
    where: {
      state: { in: ["planned", "measuring", "returned"] },
      places: { some: { sensorId: { in: [...sensorIds] } } },
    },
    select: { number: true },
    orderBy: { number: "asc" },
  });
  return runs.map(({ number }) => number);
};
