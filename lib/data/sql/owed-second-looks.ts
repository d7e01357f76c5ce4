import type { Tx } from "../in-scope";

export type OwedSecondLook = {
  readonly number: string;
  readonly signedAt: Date;
  readonly reason: string;
  readonly count: number;
};

/** Certificates signed off by whoever measured, which nobody has looked at since; the longest waiting first. */
export const owedSecondLooks = (tx: Tx, limit: number): Promise<OwedSecondLook[]> =>
  tx.$queryRaw<OwedSecondLook[]>`
    SELECT c.number, c.signed_at AS "signedAt", d.exception_reason AS reason, (count(*) OVER ())::int AS count
      FROM review_decision d
      JOIN certificate c ON c.sensor_id = d.sensor_id AND c.run_id = d.run_id
     WHERE d.decision = 'signed-off' AND d.exception_reason IS NOT NULL
       AND NOT EXISTS (SELECT FROM review_decision l WHERE l.decision = 'second-look' AND l.run_id = d.run_id
                        AND l.sensor_id IS NOT DISTINCT FROM d.sensor_id)
     ORDER BY d.id LIMIT ${limit}`;
