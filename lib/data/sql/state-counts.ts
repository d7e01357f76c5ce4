import { countedUpTo } from "@/lib/domain/list/page";
import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";

const tables = {
  order: Prisma.sql`customer_order`,
  sensor: Prisma.sql`sensor`,
  run: Prisma.sql`run`,
} as const;

/** How many rows are in each state, each counted until there are more than anybody reads. */
export const stateCounts = async (
  tx: Tx,
  table: keyof typeof tables,
  states: readonly string[],
): Promise<ReadonlyMap<string, number>> => {
  const rows = await tx.$queryRaw<{ state: string; count: number }[]>`
    SELECT s.state, c.count FROM unnest(${[...states]}::text[]) AS s (state)
      CROSS JOIN LATERAL (SELECT count(*)::int AS count FROM (
        SELECT FROM ${tables[table]} t WHERE t.state = s.state LIMIT ${countedUpTo + 1}) AS counted) AS c`;
  return new Map(rows.map(({ state, count }) => [state, count]));
};
