import type { Tx } from "@/lib/data/in-scope";
import { isReplaced } from "./hand-back";

export type OrderSensors = { readonly quantity: number; readonly states: readonly string[] };

type Row = { readonly id: string; readonly quantity: number; readonly counts: Record<string, number> | null };

/** How many sensors each order asks for, and the state of each that came and that no other is awaited for; counted where they lie, and told one by one. */
export const orderSensorStates = async (
  tx: Tx,
  ids: readonly string[],
): Promise<ReadonlyMap<string, OrderSensors>> => {
  const rows = await tx.$queryRaw<Row[]>`
    SELECT o.id::text AS id,
           (SELECT coalesce(sum(quantity), 0)::int FROM order_line WHERE order_id = o.id) AS quantity,
           (SELECT jsonb_object_agg(state, n) FROM (
              SELECT s.state, count(*) AS n FROM order_line l JOIN sensor s ON s.order_line_id = l.id
               WHERE l.order_id = o.id AND NOT ${isReplaced} GROUP BY s.state) AS counted) AS counts
      FROM unnest(${[...ids]}::uuid[]) AS o (id)`;
  return new Map(
    rows.map(({ id, quantity, counts }) => [
      id,
      {
        quantity,
        states: Object.entries(counts ?? {}).flatMap(([state, count]) => Array<string>(count).fill(state)),
      },
    ]),
  );
};
