import { countedUpTo, type Turn } from "@/lib/domain/list/page";
import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";

/** A finished sensor, with its certificate, that no file for invoicing names yet. */
const waits = Prisma.sql`NOT sensor.is_invoiced AND sensor.state IN ('issued', 'collected')
       AND (EXISTS (SELECT FROM certificate WHERE certificate.sensor_id = sensor.id)
            OR EXISTS (SELECT FROM certificate_part WHERE certificate_part.sensor_id = sensor.id))`;

const beside = (turn: Turn): Prisma.Sql => {
  if (turn.kind === "first") return Prisma.sql`true`;
  const sign = turn.kind === "after" ? Prisma.sql`>` : Prisma.sql`<`;
  return Prisma.sql`customer_order.number ${sign} ${turn.anchor}`;
};

/** Orders of which something waits to be invoiced, the oldest first; a page before an anchor comes backwards. */
export const uninvoicedOrders = (
  tx: Tx,
  turn: Turn,
  limit: number,
): Promise<{ readonly number: string }[]> => {
  const way = turn.kind === "before" ? Prisma.sql`DESC` : Prisma.sql`ASC`;
  return tx.$queryRaw`SELECT DISTINCT customer_order.number
      FROM sensor
      JOIN order_line ON order_line.id = sensor.order_line_id
      JOIN customer_order ON customer_order.id = order_line.order_id
     WHERE ${waits} AND ${beside(turn)}
     ORDER BY customer_order.number ${way} LIMIT ${limit}`;
};

/** How many there are; counting stops past `countedUpTo`. */
export const countUninvoiced = async (tx: Tx): Promise<number> =>
  (await uninvoicedOrders(tx, { kind: "first" }, countedUpTo + 1)).length;
