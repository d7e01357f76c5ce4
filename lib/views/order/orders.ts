import type { Tx } from "@/lib/data/in-scope";
import { isOrderState, type OrderState, orderStates } from "@/lib/domain/order/transitions";
import { isDone, isSensorState } from "@/lib/domain/sensor/transitions";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "../view";

/** open: what still asks for work. */
export const orderFilters = ["open", ...orderStates, "all"] as const;
export type OrderFilter = (typeof orderFilters)[number];

const shown = 200;

const statesOf = (filter: OrderFilter): readonly OrderState[] => {
  if (filter === "open") return ["recorded", "accepted"];
  return filter === "all" ? orderStates : [filter];
};

const loadOrders = (tx: Tx, filter: OrderFilter) =>
  tx.order.findMany({
    where: { state: { in: [...statesOf(filter)] } },
    orderBy: [{ recordedAt: "desc" }, { number: "desc" }],
    take: shown,
    include: {
      customer: { select: { name: true } },
      lines: {
        orderBy: { position: "asc" },
        select: { typeLetter: true, quantity: true, sensors: { select: { state: true } } },
      },
    },
  });

type Row = Awaited<ReturnType<typeof loadOrders>>[number];

const summaryOf = (row: Row) => {
  const states = row.lines.flatMap((line) => line.sensors.map(({ state }) => state)).filter(isSensorState);
  return {
    number: row.number,
    customer: row.customer.name,
    purchaseOrder: row.purchaseOrder ?? "",
    state: row.state,
    types: [...new Set(row.lines.map(({ typeLetter }) => typeLetter))],
    quantity: row.lines.reduce((sum, line) => sum + line.quantity, 0),
    received: states.length,
    issued: states.filter(isDone).length,
    recordedAt: row.recordedAt.toISOString(),
  };
};

/** The laboratory's orders, the newest first. */
export const ordersView = (actor: Actor, filter: OrderFilter) =>
  answer(actor, "laboratory.read", async (tx) => {
    const counted = await tx.order.groupBy({ by: ["state"], _count: true });
    const count = (wanted: OrderFilter): number =>
      counted
        .filter(({ state }) => isOrderState(state) && statesOf(wanted).includes(state))
        .reduce((sum, { _count }) => sum + _count, 0);
    const orders = (await loadOrders(tx, filter)).map(summaryOf);
    return {
      filter,
      filters: orderFilters.map((name) => ({ name, count: count(name) })),
      orders,
      /** How many more there are than are shown. */
      leftOut: count(filter) - orders.length,
      mayRecord: actor.kind === "system" || may(actor.roles, "order.record"),
    };
  });
