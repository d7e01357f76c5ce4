import { loadOutlooks } from "@/lib/data/board/load-outlooks";
import type { Tx } from "@/lib/data/in-scope";
import { type OrderContents, orderContents } from "@/lib/data/sql/order-contents";
import { orderPage } from "@/lib/data/sql/order-page";
import { stateCounts } from "@/lib/data/sql/state-counts";
import { isoDay } from "@/lib/domain/calibration/due";
import { isNarrowed } from "@/lib/domain/list/narrowed";
import { cutPage, turnOf } from "@/lib/domain/list/page";
import { type OrderQuery, orderFilters, orderStatesOf, shownOf } from "@/lib/domain/order/list-query";
import { orderStates } from "@/lib/domain/order/transitions";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "../view";

const loadOrders = (tx: Tx, ids: readonly string[]) =>
  tx.order.findMany({
    where: { id: { in: [...ids] } },
    include: { customer: { select: { id: true, name: true } } },
  });

type Row = Awaited<ReturnType<typeof loadOrders>>[number];

const summaryOf = (row: Row, contents: OrderContents | undefined, today: string) => {
  const promisedOn = row.promisedOn?.toISOString().slice(0, 10) ?? null;
  return {
    number: row.number,
    customer: row.customer.name,
    customerId: row.customer.id,
    purchaseOrder: row.purchaseOrder ?? "",
    state: row.state,
    urgency: row.urgency,
    ruleSet: row.ruleSet,
    types: contents?.types ?? [],
    quantity: contents?.quantity ?? 0,
    received: contents?.received ?? 0,
    issued: contents?.issued ?? 0,
    recordedAt: row.recordedAt.toISOString(),
    promisedOn,
    isLate: row.state === "accepted" && promisedOn !== null && promisedOn < today,
  };
};

const atRiskIds = async (tx: Tx, now: Date): Promise<readonly string[]> =>
  (await loadOutlooks(tx, now)).filter(({ outlook }) => outlook.kind === "risk").map(({ id }) => id);

/**
 * One page of the laboratory's orders, the newest first. Counts stop where nobody reads on; of the states there are none
 * while a word or filter leaves something out that they would count.
 */
export const ordersView = (actor: Actor, query: OrderQuery, now: Date) =>
  answer(actor, "laboratory.read", async (tx) => {
    const today = isoDay(now);
    const asked = { query, today, atRisk: query.only === "risk" ? await atRiskIds(tx, now) : [] };
    const turn = turnOf(query);
    const found = await orderPage(tx, asked, turn);
    const page = cutPage(found.rows, turn, ({ name }) => name);
    const ids = page.rows.map(({ id }) => id);
    const loaded = await loadOrders(tx, ids);
    const contents = await orderContents(tx, ids);
    const byId = new Map(loaded.map((row) => [row.id, row]));
    const counts = isNarrowed(query) ? null : await stateCounts(tx, "order", orderStates);
    const customer = query.customer
      ? await tx.customer.findUnique({ where: { id: query.customer }, select: { name: true } })
      : null;
    return {
      filter: shownOf(query),
      filters: orderFilters.map((name) => ({
        name,
        count: counts && orderStatesOf(name).reduce((sum, state) => sum + (counts.get(state) ?? 0), 0),
      })),
      count: found.count,
      customer: customer?.name ?? null,
      orders: page.rows.flatMap(({ id }) => {
        const row = byId.get(id);
        return row ? [summaryOf(row, contents.get(id), today)] : [];
      }),
      next: page.next,
      previous: page.previous,
      mayRecord: actor.kind === "system" || may(actor.roles, "order.record"),
    };
  });

export type OrdersView = Awaited<ReturnType<typeof ordersView>>;
