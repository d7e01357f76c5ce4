import { Prisma } from "@/lib/generated/prisma/client";

/** Holds on the sensor `s` and on its whole order, each with its end if it has one. */
const holdsOnIt = Prisma.sql`order_line hl
  JOIN hold h ON h.order_id = hl.order_id AND (h.sensor_id IS NULL OR h.sensor_id = s.id)
  LEFT JOIN hold_release r ON r.hold_id = h.id WHERE hl.id = s.order_line_id`;

export const isHeld = Prisma.sql`EXISTS (SELECT FROM ${holdsOnIt} AND r.id IS NULL)`;
/** A hold on `s` ended so that it goes back unmeasured: it is never loaded again. */
export const goesBack = Prisma.sql`EXISTS (SELECT FROM ${holdsOnIt} AND r.outcome = 'return-unmeasured')`;
const orderIsCancelled = Prisma.sql`EXISTS (SELECT FROM order_line ol JOIN customer_order oo ON oo.id = ol.order_id
   WHERE ol.id = s.order_line_id AND oo.state = 'cancelled')`;
/**
 * What goes to an external provider is not measured here. From the accepted orders, which are few, to their lines by key:
 * as a join, the lines of all years would be read.
 */
const isOursToMeasure = Prisma.sql`s.order_line_id = ANY (ARRAY(SELECT ol.id FROM order_line ol
   WHERE ol.provider_id IS NULL
     AND ol.order_id = ANY (ARRAY(SELECT oo.id FROM customer_order oo WHERE oo.state = 'accepted'))))`;

/** By the last line of its log `s` is with an external provider. */
const isAway = Prisma.sql`coalesce((SELECT ce.kind FROM custody_event ce WHERE ce.sensor_id = s.id
   ORDER BY ce.id DESC LIMIT 1) = 'to-provider', false)`;

/** The rule of `domain/sensor/hand-back`: the sensor `s` is to be handed back now. From the few that are here. */
export const toHandBack = Prisma.sql`(s.state IN ('issued', 'received') AND (
  ${orderIsCancelled} OR (NOT ${isHeld} AND (s.state = 'issued' OR ${goesBack})))
  AND NOT ${isAway})`;

/** Why, of a sensor `s` that is. */
export const whyHandBack = Prisma.sql`CASE WHEN s.state = 'issued' THEN 'certified'
  WHEN ${orderIsCancelled} THEN 'cancelled' ELSE 'unmeasured' END`;

/** The sensor `s` waits for its place in a furnace, and nothing keeps it from it. */
export const toLoad = Prisma.sql`(s.state = 'received' AND ${isOursToMeasure}
  AND NOT EXISTS (SELECT FROM ${holdsOnIt} AND (r.id IS NULL OR r.outcome = 'return-unmeasured')))`;

/** Another sensor is awaited in the place of `s`: it does not count towards what was ordered. */
export const isReplaced = Prisma.sql`EXISTS (SELECT FROM hold rh JOIN hold_release rr ON rr.hold_id = rh.id
  WHERE rh.sensor_id = s.id AND rr.awaits_another)`;
