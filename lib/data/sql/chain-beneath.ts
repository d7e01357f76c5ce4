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

/** All that these records stand on, each thing once: UNION keeps what was visited. By key at every step. */
export const chainBeneathSql = (kind: string, recordIds: readonly string[]): Prisma.Sql => Prisma.sql`
    WITH RECURSIVE reached (id) AS (
      SELECT n.id FROM trace_node n WHERE n.kind = ${kind} AND n.record_id = ANY (${[...recordIds]}::text[])
      UNION
      SELECT e.to_id FROM reached r JOIN trace_edge e ON e.from_id = r.id
    )
    SELECT n.id::text AS id, n.kind, n.record_id AS "recordId", n.title, n.detail, n.facts, n.height,
           n.frozen_at AS "frozenAt"
      FROM reached r JOIN trace_node n ON n.id = r.id`;

export const chainBeneath = (tx: Tx, kind: string, recordIds: readonly string[]): Promise<TraceNodeRow[]> =>
  tx.$queryRaw(chainBeneathSql(kind, recordIds));
