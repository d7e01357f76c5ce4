import type { Tx } from "../in-scope";
import { isReplaced } from "./hand-back";
import { type OrderAsked, orderConditions } from "./order-conditions";
import { allOf } from "./page-fragments";

export type WaitingOrderRow = {
  readonly number: string;
  readonly customer: string;
  readonly promisedOn: string | null;
  readonly ordered: number;
  readonly here: number;
};

/** The first of them that came, with how many sensors were ordered and are here. */
export const oldestOrders = (tx: Tx, asked: OrderAsked, limit: number): Promise<WaitingOrderRow[]> =>
  tx.$queryRaw<WaitingOrderRow[]>`
    SELECT o.number, c.name AS customer, o.promised_on::text AS "promisedOn",
           (SELECT coalesce(sum(l.quantity), 0) FROM order_line l WHERE l.order_id = o.id)::int AS ordered,
           (SELECT count(*) FROM order_line l JOIN sensor s ON s.order_line_id = l.id 
             WHERE l.order_id = o.id AND NOT ${isReplaced})::int AS here
      FROM (SELECT o.id, o.number, o.customer_id, o.promised_on, o.recorded_at FROM customer_order o
             WHERE ${allOf(orderConditions(asked))} ORDER BY o.recorded_at, o.number LIMIT ${limit}) AS o
      JOIN customer c ON c.id = o.customer_id
     ORDER BY o.recorded_at, o.number`;
