import type { Tx } from "../in-scope";

export type CertificateEndingRow = {
  readonly id: string;
  readonly hasFile: boolean;
  /** amended | replaced | withdrawn; null where it did not end. */
  readonly kind: string | null;
  readonly reason: string | null;
  readonly decidedAt: Date | null;
  readonly successor: string | null;
  readonly successorToken: string | null;
};

/** How each of these certificates ended, if it did, and whether its file is made: one look a certificate, by its key. */
export const certificateEndings = (tx: Tx, ids: readonly string[]): Promise<CertificateEndingRow[]> =>
  tx.$queryRaw<CertificateEndingRow[]>`
    SELECT c.id::text AS id, EXISTS (SELECT FROM certificate_file f WHERE f.certificate_id = c.id) AS "hasFile",
           e.kind, e.reason, e.decided_at AS "decidedAt", n.number AS successor, n.token AS "successorToken"
      FROM unnest(${[...ids]}::uuid[]) AS c (id)
      LEFT JOIN certificate_ending e ON e.certificate_id = c.id
      LEFT JOIN certificate n ON n.id = e.successor_id`;
