import { countedUpTo, type Turn } from "@/lib/domain/list/page";
import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";

/**
 * Lines with a finished sensor, with its certificate, that no file for invoicing names yet. Found first, from the index of
 * what is not invoiced, and looked up certificate by certificate: planned as one with the page, all orders or all
 * certificates of the years would be walked.
 */
const waitingLines = Prisma.sql`SELECT DISTINCT sensor.order_line_id FROM sensor
     WHERE NOT sensor.is_invoiced AND sensor.state IN ('issued', 'collected')
       AND (sensor.id IN (SELECT c.sensor_id FROM certificate c WHERE c.sensor_id = sensor.id)
            OR sensor.id IN (SELECT p.sensor_id FROM certificate_part p WHERE p.sensor_id = sensor.id))`;

const beside = (turn: Turn): Prisma.Sql => {
  if (turn.kind === "first") return Prisma.sql`true`;
  const sign = turn.kind === "after" ? Prisma.sql`>` : Prisma.sql`<`;
  return Prisma.sql`number ${sign} ${turn.anchor}`;
};

/** Orders of which something waits to be invoiced, the oldest first; a page before an anchor comes backwards. */
export const uninvoicedOrders = (
  tx: Tx,
  turn: Turn,
  limit: number,
): Promise<{ readonly number: string }[]> => {
  const way = turn.kind === "before" ? Prisma.sql`DESC` : Prisma.sql`ASC`;
  return tx.$queryRaw`
    WITH line AS MATERIALIZED (${waitingLines}),
         waiting AS MATERIALIZED (
           SELECT DISTINCT customer_order.number FROM line
             JOIN order_line ON order_line.id = line.order_line_id
             JOIN customer_order ON customer_order.id = order_line.order_id)
    SELECT number FROM waiting WHERE ${beside(turn)} ORDER BY number ${way} LIMIT ${limit}`;
};

/** How many there are; counting stops past `countedUpTo`. */
export const countUninvoiced = async (tx: Tx): Promise<number> =>
  (await uninvoicedOrders(tx, { kind: "first" }, countedUpTo + 1)).length;
