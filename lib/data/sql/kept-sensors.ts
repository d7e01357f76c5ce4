import type { Tx } from "../in-scope";
import { toHandBack, whyHandBack } from "./hand-back";

export type KeptSensorRow = {
  readonly id: string;
  readonly tag: string;
  readonly orderNumber: string;
  /** certified | unmeasured | cancelled */
  readonly why: string;
  /** Since when it could go: its last certificate or a provider's that counts, the end of its hold, the end of its order, or its receipt. */
  readonly since: Date;
  readonly count: number;
};

/** Sensors that are still here although they could go before a moment, the longest first. A lot names each of its sensors. */
export const keptSensors = (tx: Tx, before: Date, limit: number): Promise<KeptSensorRow[]> =>
  tx.$queryRaw<KeptSensorRow[]>`
    SELECT k.id, k.tag, k."orderNumber", k.why, k.since, (count(*) OVER ())::int AS count
      FROM (SELECT s.id::text AS id, s.tag, o.number AS "orderNumber", why.why,
                   coalesce(CASE why.why
                     WHEN 'certified' THEN greatest(
                       (SELECT max(c.signed_at) FROM certificate c WHERE c.sensor_id = s.id),
                       (SELECT max(c.signed_at) FROM certificate_part p JOIN certificate c ON c.id = p.certificate_id
                         WHERE p.sensor_id = s.id),
                       (SELECT max(d.decided_at) FROM provider_report r
                          JOIN provider_report_decision d ON d.report_id = r.id AND d.decision = 'accepted'
                         WHERE r.sensor_id = s.id))
                     WHEN 'unmeasured' THEN (
                       SELECT max(r.released_at) FROM hold h JOIN hold_release r ON r.hold_id = h.id
                        WHERE h.order_id = o.id AND (h.sensor_id IS NULL OR h.sensor_id = s.id))
                     ELSE (SELECT to_timestamp(max(e.at_microseconds) / 1000000.0) FROM audit_event e
                            WHERE e.entity_kind = 'order' AND e.entity_id = o.id::text AND e.action = 'order.cancelled')
                   END, i.taken_in_at) AS since
              FROM sensor s
              JOIN order_line l ON l.id = s.order_line_id JOIN customer_order o ON o.id = l.order_id
              LEFT JOIN intake i ON i.sensor_id = s.id
              CROSS JOIN LATERAL (SELECT ${whyHandBack} AS why) AS why
             WHERE ${toHandBack}) AS k
     WHERE k.since < ${before}
     ORDER BY k.since, k.tag LIMIT ${limit}`;
