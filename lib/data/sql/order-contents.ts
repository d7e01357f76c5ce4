import type { Tx } from "@/lib/data/in-scope";
import { isReplaced } from "./hand-back";

export type OrderContents = {
  readonly id: string;
  /** Each once, in the order of the lines. */
  readonly types: readonly string[];
  readonly quantity: number;
  /** How many sensors are or were here, without those that another is awaited for, and how many have their certificate or went back. */
  readonly received: number;
  readonly issued: number;
};

/** What is in each of these orders, in one question: a list that loads every line and sensor grows with its orders. */
export const orderContents = async (
  tx: Tx,
  ids: readonly string[],
): Promise<ReadonlyMap<string, OrderContents>> => {
  const rows = await tx.$queryRaw<(Omit<OrderContents, "types"> & { readonly letters: string })[]>`
    SELECT l.order_id::text AS id, string_agg(l.type_letter, '' ORDER BY l.position) AS letters,
           sum(l.quantity)::int AS quantity, sum(s.received)::int AS received, sum(s.issued)::int AS issued
      FROM order_line l CROSS JOIN LATERAL (
        SELECT count(*) AS received, count(*) FILTER (WHERE state IN ('issued', 'collected')) AS issued
          FROM sensor s WHERE s.order_line_id = l.id AND NOT ${isReplaced}) AS s
     WHERE l.order_id = ANY(${[...ids]}::uuid[]) GROUP BY l.order_id`;
  return new Map(rows.map(({ letters, ...row }) => [row.id, { ...row, types: [...new Set(letters)] }]));
};
