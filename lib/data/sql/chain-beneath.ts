import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";

export type TraceNodeRow = {
  readonly id: string;
  readonly kind: string;
  readonly recordId: string;
  readonly title: string;
  readonly detail: string;
  readonly facts: string;
  readonly height: number;
  readonly frozenAt: Date;
};

/**
 * All that these records stand on, each thing once: UNION keeps what was visited. OFFSET 0 keeps the planner, which
 * cannot know how short a chain is, from walking whole tables: every step is by key.
 */
export const chainBeneathSql = (kind: string, recordIds: readonly string[]): Prisma.Sql => Prisma.sql`
    WITH RECURSIVE reached (id) AS (
      SELECT n.id FROM trace_node n WHERE n.kind = ${kind} AND n.record_id = ANY (${[...recordIds]}::text[])
      UNION
      SELECT e.to_id FROM reached r
        CROSS JOIN LATERAL (SELECT to_id FROM trace_edge WHERE from_id = r.id OFFSET 0) AS e
    )
    SELECT n.id::text AS id, n.kind, n.record_id AS "recordId", n.title, n.detail, n.facts, n.height,
           n.frozen_at AS "frozenAt"
      FROM reached r CROSS JOIN LATERAL (SELECT * FROM trace_node WHERE id = r.id OFFSET 0) AS n`;

export const chainBeneath = (tx: Tx, kind: string, recordIds: readonly string[]): Promise<TraceNodeRow[]> =>
  tx.$queryRaw(chainBeneathSql(kind, recordIds));
