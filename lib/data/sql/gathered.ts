import { countedUpTo, pageSize, type Turn } from "@/lib/domain/list/page";
import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";
import { allOf, direction } from "./page-fragments";

/**
 * What words find is gathered up to so many, each way by an index of its own, and sorted then. Where there is more, a
 * list that is read in its own order meets enough of it soon. One statement for both would leave the choice to what the
 * planner guesses of the words.
 */
export const mostGathered = countedUpTo;

/** The ids that any of the ways finds, each once and no more than one over the most: so that more is seen as more. */
export const gathered = (ways: readonly Prisma.Sql[], most: number): Prisma.Sql => Prisma.sql`
  SELECT g.id FROM (${Prisma.join(
    ways.map((way) => Prisma.sql`(${way} LIMIT ${most + 1})`),
    " UNION ",
  )}) AS g(id) LIMIT ${most + 1}`;

type List = {
  /** The table with the letter that the conditions call it by, and its columns: read by moment, then by name. */
  readonly from: Prisma.Sql;
  readonly columns: { readonly id: Prisma.Sql; readonly name: Prisma.Sql; readonly moment: Prisma.Sql };
  readonly ways: readonly Prisma.Sql[];
  /** Gathered before the ways, which read it as `item`. */
  readonly items?: readonly Prisma.Sql[];
  /** All but the words. */
  readonly conditions: readonly Prisma.Sql[];
  /** Of `a.moment` and `a.name`. */
  readonly side: Prisma.Sql;
  readonly turn: Turn;
};

type Row = {
  readonly found: number;
  readonly count: number;
  readonly id: string | null;
  readonly name: string | null;
};

export type ListPage = {
  /** One page and one row more. */
  readonly rows: readonly { readonly id: string; readonly name: string }[];
  readonly count: number;
};

/** One page of what the words find and the conditions leave; null: the words find more than is gathered. */
export const gatheredPage = async (
  tx: Tx,
  { columns: { id, moment, name }, conditions, from, items = [], side, turn, ways }: List,
  most: number,
): Promise<ListPage | null> => {
  const none = Prisma.sql`SELECT NULL::uuid AS id WHERE false`;
  const rows = await tx.$queryRaw<Row[]>`
    WITH item AS MATERIALIZED (${items.length > 0 ? gathered(items, most) : none}),
    found AS MATERIALIZED (${gathered(ways, most)}),
    asked AS MATERIALIZED (
      SELECT ${id} AS id, ${name} AS name, ${moment} AS moment FROM ${from}
       WHERE (SELECT count(*) FROM found) <= ${most}
         AND ${allOf([Prisma.sql`${id} = ANY (ARRAY(SELECT f.id FROM found f))`, ...conditions])})
    SELECT greatest((SELECT count(*) FROM item), (SELECT count(*) FROM found))::int AS found,
           (SELECT count(*)::int FROM asked) AS count, page.id::text AS id, page.name
      FROM (SELECT) AS always LEFT JOIN (
        SELECT a.* FROM asked a WHERE ${side}
         ORDER BY a.moment ${direction(turn)}, a.name ${direction(turn)} LIMIT ${pageSize + 1}) AS page ON true
     ORDER BY page.moment ${direction(turn)}, page.name ${direction(turn)}`;
  const { count = 0, found = 0 } = rows[0] ?? {};
  if (found > most) return null;
  return {
    count,
    rows: rows.flatMap((row) =>
      row.id === null || row.name === null ? [] : [{ id: row.id, name: row.name }],
    ),
  };
};
