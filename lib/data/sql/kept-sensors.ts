import type { Tx } from "../in-scope";

export type KeptSensorRow = {
  readonly id: string;
  readonly tag: string;
  readonly orderNumber: string;
  readonly signedAt: Date;
  readonly count: number;
};

/** Sensors that are still here although their last certificate was signed before a moment, the longest first. */
export const keptSensors = (tx: Tx, before: Date, limit: number): Promise<KeptSensorRow[]> =>
  tx.$queryRaw<KeptSensorRow[]>`
    SELECT s.id::text AS id, s.tag, o.number AS "orderNumber", c.signed_at AS "signedAt", (count(*) OVER ())::int AS count
      FROM sensor s
      JOIN order_line l ON l.id = s.order_line_id JOIN customer_order o ON o.id = l.order_id
      CROSS JOIN LATERAL (SELECT max(signed_at) AS signed_at FROM certificate WHERE sensor_id = s.id) AS c
     WHERE s.state = 'issued' AND c.signed_at < ${before}
     ORDER BY c.signed_at, s.tag LIMIT ${limit}`;
