import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";

export type TraceEdgeRow = {
  readonly fromId: string;
  readonly toId: string;
  readonly role: string;
  readonly certificate: string;
  readonly issuer: string;
  readonly accreditation: string;
  readonly route: string;
  readonly performedOn: Date | null;
  readonly validUntil: Date | null;
  readonly expanded: number | null;
  readonly unit: string;
  readonly coverageFactor: number | null;
  readonly atCelsius: number | null;
  readonly sensitivity: number | null;
  readonly evidenceSha256: string | null;
};

/** What these nodes stand on directly, in the order it was written; by key (see `chain-beneath`). */
export const chainEdgesSql = (nodeIds: readonly string[]): Prisma.Sql => Prisma.sql`
    SELECT e.from_id::text AS "fromId", e.to_id::text AS "toId", e.role, e.certificate, e.issuer, e.accreditation,
           e.route, e.performed_on AS "performedOn", e.valid_until AS "validUntil", e.expanded, e.unit,
           e.coverage_factor AS "coverageFactor", e.at_celsius AS "atCelsius", e.sensitivity,
           encode(e.evidence_sha256, 'hex') AS "evidenceSha256"
      FROM unnest(${[...nodeIds]}::uuid[]) AS node (id)
     CROSS JOIN LATERAL (SELECT * FROM trace_edge WHERE from_id = node.id OFFSET 0) AS e
     ORDER BY e.id`;

export const chainEdges = (tx: Tx, nodeIds: readonly string[]): Promise<TraceEdgeRow[]> =>
  tx.$queryRaw(chainEdgesSql(nodeIds));
