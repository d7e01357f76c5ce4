import { countedUpTo } from "@/lib/domain/list/page";
import type { Tx } from "../in-scope";
import { type OrderAsked, orderConditions } from "./order-conditions";
import { allOf } from "./page-fragments";

/** How many there are, counted until there are more than anybody reads. */
export const orderCount = async (tx: Tx, asked: OrderAsked): Promise<number> => {
  const [row] = await tx.$queryRaw<{ count: number }[]>`
    SELECT count(*)::int AS count FROM (
      SELECT FROM customer_order o WHERE ${allOf(orderConditions(asked))} LIMIT ${countedUpTo + 1}) AS counted`;
  return row?.count ?? 0;
};
