import type { Tx } from "../in-scope";

/** Orders with a finished sensor that no file for invoicing names yet, the oldest first. */
export const uninvoicedOrders = (tx: Tx, limit: number): Promise<readonly { readonly number: string }[]> =>
  tx.$queryRaw`SELECT DISTINCT customer_order.number
      FROM sensor
      JOIN order_line ON order_line.id = sensor.order_line_id
      JOIN customer_order ON customer_order.id = order_line.order_id
     WHERE NOT sensor.is_invoiced AND sensor.state IN ('issued', 'collected')
       AND (EXISTS (SELECT FROM certificate WHERE certificate.sensor_id = sensor.id)
            OR EXISTS (SELECT FROM certificate_part WHERE certificate_part.sensor_id = sensor.id))
     ORDER BY customer_order.number LIMIT ${limit}`;
