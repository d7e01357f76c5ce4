import type { Tx } from "@/lib/data/in-scope";
import { Prisma } from "@/lib/generated/prisma/client";

export type CorrectedSerialRow = { readonly sensor_id: string; readonly serial: string };

/**
 * The serial that the newest certificate that followed another one gives a sensor. A correction changes no sensor's own
 * record: that is what was read when it came. Only certificates that followed are opened, which are few.
 */
export const correctedSerials = (customerId: string): Prisma.Sql => Prisma.sql`
    SELECT DISTINCT ON (sensor.id) sensor.id AS sensor_id, said.item ->> 'serial' AS serial
      FROM certificate_ending ending
      JOIN certificate ON certificate.id = ending.successor_id
     CROSS JOIN LATERAL (
       SELECT certificate.content::json -> 'item' AS item
       UNION ALL
       SELECT one -> 'item' FROM json_array_elements(certificate.content::json -> 'sets') AS one
     ) AS said
      JOIN sensor ON sensor.tag = said.item ->> 'tag'
     WHERE ending.customer_id = ${customerId}::uuid AND sensor.customer_id = ${customerId}::uuid
     ORDER BY sensor.id, certificate.number DESC`;

export const correctedSerialRows = (tx: Tx, customerId: string): Promise<CorrectedSerialRow[]> =>
  tx.$queryRaw<CorrectedSerialRow[]>(correctedSerials(customerId));
