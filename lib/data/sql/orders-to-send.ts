import type { Tx } from "../in-scope";
import { toHandBack } from "./hand-back";

export type OrderToSend = {
  readonly number: string;
  readonly customer: string;
  readonly sensors: number;
  readonly unmeasured: number;
};

/** Orders of which something is to be handed back, those promised first before the others. */
export const ordersToSend = (tx: Tx, limit: number): Promise<OrderToSend[]> =>
  tx.$queryRaw<OrderToSend[]>`
    SELECT o.number, c.name AS customer, count(*)::int AS sensors,
           (count(*) FILTER (WHERE s.state <> 'issued'))::int AS unmeasured
      FROM sensor s
      JOIN order_line l ON l.id = s.order_line_id
      JOIN customer_order o ON o.id = l.order_id
      JOIN customer c ON c.id = o.customer_id
     WHERE ${toHandBack}
     GROUP BY o.id, c.id
     ORDER BY o.promised_on NULLS LAST, o.number LIMIT ${limit}`;
