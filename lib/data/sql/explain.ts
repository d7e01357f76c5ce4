import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";

/** One step of PostgreSQL's plan with what it read, in buffers of 8 KiB. */
export type Plan = {
  readonly "Node Type": string;
  readonly "Relation Name"?: string;
  readonly "Shared Hit Blocks": number;
  readonly "Shared Read Blocks": number;
  readonly Plans?: readonly Plan[];
};

/** Runs a statement and gives the plan it was run by. */
export const explain = async (tx: Tx, statement: Prisma.Sql): Promise<Plan> => {
  const rows = await tx.$queryRaw<{ "QUERY PLAN": readonly [{ readonly Plan: Plan }] }[]>(
    Prisma.sql`EXPLAIN (ANALYZE, BUFFERS, FORMAT JSON) ${statement}`,
  );
  return rows[0]!["QUERY PLAN"][0].Plan;
};
