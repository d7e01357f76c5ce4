import { countedUpTo, pageSize, type Turn } from "@/lib/domain/list/page";
import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";
import { gatheredPage, type ListPage, mostGathered } from "./gathered";
import { type OrderAsked, orderConditions } from "./order-conditions";
import { orderCount } from "./order-count";
import { orderWays } from "./order-words";
import { allOf, direction, onThisSide } from "./page-fragments";

const side = (turn: Turn, columns: { readonly moment: Prisma.Sql; readonly id: Prisma.Sql }): Prisma.Sql => {
  const anchor = turn.kind === "first" ? "" : turn.anchor;
  return onThisSide(turn, columns, (column) =>
    column === "moment"
      ? Prisma.sql`(SELECT n.recorded_at FROM customer_order n WHERE n.number = ${anchor})`
      : Prisma.sql`${anchor}::text`,
  );
};

/** Read in the list's own order, the newest first. */
export const orderPageSql = (asked: OrderAsked, turn: Turn): Prisma.Sql => Prisma.sql`
    SELECT o.id::text AS id, o.number AS name FROM customer_order o
     WHERE ${allOf([...orderConditions(asked), side(turn, { moment: Prisma.sql`o.recorded_at`, id: Prisma.sql`o.number` })])}
     ORDER BY o.recorded_at ${direction(turn)}, o.number ${direction(turn)} LIMIT ${pageSize + 1}`;

const byWords = async (
  tx: Tx,
  { query: { q, ...others }, ...asked }: OrderAsked,
  turn: Turn,
  most: number,
): Promise<ListPage | null> =>
  q
    ? gatheredPage(
        tx,
        {
          from: Prisma.sql`customer_order o`,
          columns: {
            ...{ id: Prisma.sql`o.id`, name: Prisma.sql`o.number` },
            moment: Prisma.sql`o.recorded_at`,
          },
          ways: orderWays(q),
          conditions: orderConditions({ ...asked, query: others }),
          side: side(turn, { moment: Prisma.sql`a.moment`, id: Prisma.sql`a.name` }),
          turn,
        },
        most,
      )
    : null;

/** Nothing but words narrows it, and they find more than is counted. */
const isUncounted = (asked: OrderAsked, most: number): boolean =>
  Boolean(asked.query.q) && orderConditions(asked).length === 1 && most >= countedUpTo;

/** One page of orders and one row more, the newest first, with how many there are, counted as far as anybody reads. */
export const orderPage = async (
  tx: Tx,
  asked: OrderAsked,
  turn: Turn,
  most = mostGathered,
): Promise<ListPage> =>
  (await byWords(tx, asked, turn, most)) ?? {
    rows: await tx.$queryRaw<ListPage["rows"]>(orderPageSql(asked, turn)),
    count: isUncounted(asked, most) ? countedUpTo + 1 : await orderCount(tx, asked),
  };
