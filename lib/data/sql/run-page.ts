import { pageSize, type Turn } from "@/lib/domain/list/page";
import { type RunQuery, runStatesOf, shownRuns } from "@/lib/domain/run/list-query";
import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";
import { allOf, direction, onThisSide } from "./page-fragments";

type NamedRow = { readonly id: string; readonly number: string };

const conditions = (query: RunQuery): readonly Prisma.Sql[] => {
  const filter = shownRuns(query);
  return [
    ...(filter === "all" ? [] : [Prisma.sql`r.state = ANY (${[...runStatesOf(filter)]}::text[])`]),
    ...(query.furnace
      ? [
          Prisma.sql`r.configuration_id IN (
            SELECT f.id FROM furnace_configuration f WHERE f.furnace_id = ${query.furnace}::uuid)`,
        ]
      : []),
  ];
};

/** One page of runs and one row more, the newest first. */
export const runPageSql = (query: RunQuery, turn: Turn): Prisma.Sql => {
  const anchor = turn.kind === "first" ? "" : turn.anchor;
  const side = onThisSide(turn, { moment: Prisma.sql`r.created_at`, id: Prisma.sql`r.number` }, (column) =>
    column === "moment"
      ? Prisma.sql`(SELECT a.created_at FROM run a WHERE a.number = ${anchor})`
      : Prisma.sql`${anchor}::text`,
  );
  return Prisma.sql`
    SELECT r.id::text AS id, r.number FROM run r WHERE ${allOf([...conditions(query), side])}
     ORDER BY r.created_at ${direction(turn)}, r.number ${direction(turn)} LIMIT ${pageSize + 1}`;
};

export const runPage = (tx: Tx, query: RunQuery, turn: Turn): Promise<NamedRow[]> =>
  tx.$queryRaw(runPageSql(query, turn));
