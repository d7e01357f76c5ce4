import type { ProgressAside } from "@/lib/domain/order/progress";
import type { Tx } from "../in-scope";
import { goesBack, isHeld, isReplaced } from "./hand-back";

type Row = Required<Omit<ProgressAside, "replacedSerials" | "isAsked" | "offer">> & { readonly id: string };

/** With how many sensors of each order the work does not go on, and how. */
export const orderAsideCounts = async (
  tx: Tx,
  ids: readonly string[],
): Promise<ReadonlyMap<string, ProgressAside>> => {
  const rows = await tx.$queryRaw<Row[]>`
    SELECT one.id::text AS id,
           (count(*) FILTER (WHERE held AND NOT replaced AND state NOT IN ('issued', 'collected')))::int AS held,
           (count(*) FILTER (WHERE back AND NOT held AND NOT replaced AND state = 'received'))::int AS "goingBack",
           (count(*) FILTER (WHERE back AND NOT replaced AND state = 'collected'))::int AS "goneUnmeasured",
           (count(*) FILTER (WHERE replaced))::int AS replaced,
           (count(*) FILTER (WHERE replaced AND state <> 'collected'))::int AS "replacedHere"
      FROM (SELECT l.order_id AS id, s.state, ${isHeld} AS held, ${goesBack} AS back, ${isReplaced} AS replaced
              FROM order_line l JOIN sensor s ON s.order_line_id = l.id
             WHERE l.order_id = ANY (${[...ids]}::uuid[])
               AND EXISTS (SELECT FROM hold oh WHERE oh.order_id = l.order_id)) AS one
     GROUP BY one.id`;
  return new Map(rows.map(({ id, ...counts }) => [id, counts]));
};
