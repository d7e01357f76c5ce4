import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";

export type StandingResultRow = {
  readonly recordId: string;
  readonly title: string;
  readonly detail: string;
  readonly facts: string;
  readonly frozenAt: Date;
  /** Of all that stand on it, whatever page this is. */
  readonly count: number;
};

/**
 * Every result that stands on these records, directly or through others, newest first: a page of them, and how many
 * there are. Transitive: a working standard calibrated with it carries it on. By key (see `chain-beneath`).
 */
export const resultsStandingOnSql = (
  kind: string,
  recordIds: readonly string[],
  page: { readonly limit: number; readonly offset: number },
): Prisma.Sql => Prisma.sql`
    WITH RECURSIVE reached (id) AS (
      SELECT n.id FROM trace_node n WHERE n.kind = ${kind} AND n.record_id = ANY (${[...recordIds]}::text[])
      UNION
      SELECT e.from_id FROM reached r
        CROSS JOIN LATERAL (SELECT from_id FROM trace_edge WHERE to_id = r.id OFFSET 0) AS e
    )
    SELECT n.record_id AS "recordId", n.title, n.detail, n.facts, n.frozen_at AS "frozenAt",
           (count(*) OVER ())::int AS count
      FROM reached r CROSS JOIN LATERAL (SELECT * FROM trace_node WHERE id = r.id OFFSET 0) AS n
     WHERE n.kind = 'result'
     ORDER BY n.frozen_at DESC, n.facts::json ->> 'certificate', (n.facts::json ->> 'celsius')::float8, n.id
     LIMIT ${page.limit} OFFSET ${page.offset}`;

export const resultsStandingOn = (
  tx: Tx,
  kind: string,
  recordIds: readonly string[],
  page: { readonly limit: number; readonly offset: number },
): Promise<StandingResultRow[]> => tx.$queryRaw(resultsStandingOnSql(kind, recordIds, page));
