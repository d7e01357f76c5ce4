import { Prisma } from "@/lib/generated/prisma/client";

/**
 * What each certificate of a customer that followed another one calls its sensors, as the rest of a query:
 * `said.item ->> 'serial'`, beside `sensor` and `certificate`. Only certificates that followed are opened, which are few.
 */
export const correctedItems = (customerId: string): Prisma.Sql => Prisma.sql`
      FROM certificate_ending ending
      JOIN certificate ON certificate.id = ending.successor_id
     CROSS JOIN LATERAL (
       SELECT certificate.content::json -> 'item' AS item
       UNION ALL
       SELECT one -> 'item' FROM json_array_elements(certificate.content::json -> 'sets') AS one
     ) AS said
      JOIN sensor ON sensor.tag = said.item ->> 'tag'
     WHERE ending.customer_id = ${customerId}::uuid AND sensor.customer_id = ${customerId}::uuid`;
