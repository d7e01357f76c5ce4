import { pageSize, type Turn } from "@/lib/domain/list/page";
import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";
import { type OrderAsked, orderConditions } from "./order-conditions";
import { allOf, direction, onThisSide } from "./page-fragments";

type NamedRow = { readonly id: string; readonly number: string };

/** One page of orders and one row more, the newest first. */
export const orderPageSql = (asked: OrderAsked, turn: Turn): Prisma.Sql => {
  const anchor = turn.kind === "first" ? "" : turn.anchor;
  const side = onThisSide(turn, { moment: Prisma.sql`o.recorded_at`, id: Prisma.sql`o.number` }, (column) =>
    column === "moment"
      ? Prisma.sql`(SELECT a.recorded_at FROM customer_order a WHERE a.number = ${anchor})`
      : Prisma.sql`${anchor}::text`,
  );
  return Prisma.sql`
    SELECT o.id::text AS id, o.number FROM customer_order o
     WHERE ${allOf([...orderConditions(asked), side])}
     ORDER BY o.recorded_at ${direction(turn)}, o.number ${direction(turn)} LIMIT ${pageSize + 1}`;
};

export const orderPage = (tx: Tx, asked: OrderAsked, turn: Turn): Promise<NamedRow[]> =>
  tx.$queryRaw(orderPageSql(asked, turn));
