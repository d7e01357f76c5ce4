import { Prisma } from "@/lib/generated/prisma/client";
import { beginsWith, isNamed, upperOf } from "./page-fragments";
import { sensorHas } from "./sensor-words";

/**
 * Statements that each find ids of certificates by an index: by their own number, by their sensors, gathered before as
 * `item`, one by one or in a lot, by their order's number, and by their customer's name.
 */
export const certificateWays = (text: string): readonly Prisma.Sql[] => {
  const any = Prisma.sql`ANY (ARRAY(SELECT i.id FROM item i))`;
  return [
    Prisma.sql`SELECT n.id FROM certificate n WHERE ${beginsWith(Prisma.sql`n.number`, upperOf(text))}`,
    Prisma.sql`SELECT n.id FROM certificate n WHERE n.sensor_id = ${any}`,
    Prisma.sql`SELECT p.certificate_id FROM certificate_part p WHERE p.sensor_id = ${any}`,
    Prisma.sql`SELECT n.id FROM customer_order o JOIN certificate n ON n.order_id = o.id
      WHERE ${beginsWith(Prisma.sql`o.number`, upperOf(text))}`,
    Prisma.sql`SELECT n.id FROM customer k JOIN certificate n ON n.customer_id = k.id
      WHERE ${isNamed(Prisma.sql`k`, text)}`,
  ];
};

/**
 * The same of one certificate `c`, where the list is read in its own order: its sensors are asked of each row that
 * is met, since EXISTS would be answered for every sensor there is before the first.
 */
export const certificateHas = (text: string): Prisma.Sql => Prisma.sql`(
  ${beginsWith(Prisma.sql`c.number`, upperOf(text))}
  OR c.customer_id = ANY (ARRAY(SELECT k.id FROM customer k WHERE ${isNamed(Prisma.sql`k`, text)}))
  OR c.order_id = ANY (ARRAY(SELECT o.id FROM customer_order o WHERE ${beginsWith(Prisma.sql`o.number`, upperOf(text))}))
  OR coalesce((SELECT ${sensorHas(Prisma.sql`s`, text)} FROM sensor s WHERE s.id = c.sensor_id), false)
  OR coalesce((SELECT bool_or(${sensorHas(Prisma.sql`s`, text)}) FROM certificate_part p JOIN sensor s ON s.id = p.sensor_id
                WHERE p.certificate_id = c.id), false))`;
