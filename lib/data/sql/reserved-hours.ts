import type { Tx } from "../in-scope";
import { goesBack, isHeld, isReplaced } from "./hand-back";

export type ReservedHoursRow = {
  readonly id: string;
  readonly furnaceId: string;
  readonly furnaceTag: string;
  readonly startsAt: Date;
  readonly endsAt: Date;
  readonly note: string;
  readonly orderId: string | null;
  readonly order: string | null;
  readonly customer: string | null;
  readonly urgency: string | null;
  readonly promisedOn: string | null;
  /** JSON text: what each of the hours is for, as it was promised. */
  readonly basis: string | null;
  /**
   * Measurements the order still waits for a furnace with: what is in one or was in one is not counted, nor what goes back
   * unmeasured; what is awaited in the place of another is.
   */
  readonly owed: number;
};

/** Hours that are kept for promised orders and not over at a moment, with how much of each order still waits. */
export const reservedHours = (tx: Tx, since: Date): Promise<ReservedHoursRow[]> =>
  tx.$queryRaw<ReservedHoursRow[]>`
    WITH slot AS MATERIALIZED (SELECT * FROM furnace_slot WHERE NOT is_released AND ends_at > ${since}),
    owed AS (
      SELECT l.order_id, sum(greatest(0, line.owed))::int AS owed
        FROM order_line l
        CROSS JOIN LATERAL (SELECT EXISTS (SELECT FROM hold h WHERE h.order_id = l.order_id) AS ever) AS held
        CROSS JOIN LATERAL (SELECT CASE WHEN l.options::jsonb ->> 'sets' = 'both' THEN 2 ELSE 1 END AS sets) AS k
        CROSS JOIN LATERAL (
          SELECT l.quantity * k.sets - coalesce(sum(CASE
                   WHEN s.state IN ('issued', 'collected') OR (held.ever AND ${goesBack} AND NOT ${isHeld}) THEN k.sets
                   WHEN k.sets = 1 THEN (s.state <> 'received')::int
                   ELSE (SELECT count(DISTINCT p.set_kind) FROM load_place p JOIN run r ON r.id = p.run_id
                          WHERE p.customer_id = s.customer_id AND p.sensor_id = s.id AND r.state <> 'abandoned')
                 END), 0)::int AS owed
            FROM sensor s WHERE s.order_line_id = l.id AND NOT (held.ever AND ${isReplaced})) AS line
       WHERE l.order_id IN (SELECT order_id FROM slot) AND l.performed_at = 'laboratory' AND l.provider_id IS NULL
       GROUP BY l.order_id)
    SELECT slot.id::text AS id, slot.furnace_id::text AS "furnaceId", f.tag AS "furnaceTag",
           slot.starts_at AS "startsAt", slot.ends_at AS "endsAt", slot.note,
           o.id::text AS "orderId", o.number AS "order", c.name AS customer, o.urgency,
           o.promised_on::text AS "promisedOn", o.promise_basis AS basis, coalesce(owed.owed, 0) AS owed
      FROM slot JOIN furnace f ON f.id = slot.furnace_id
      LEFT JOIN customer_order o ON o.id = slot.order_id LEFT JOIN customer c ON c.id = o.customer_id
      LEFT JOIN owed ON owed.order_id = o.id
     ORDER BY slot.starts_at, slot.id`;
