import { Prisma } from "@/lib/generated/prisma/client";
import { correctedTo } from "./corrected-words";
import { beginsWith, keyOf, tailOf, upperOf } from "./page-fragments";

const isShort = (text: string): Prisma.Sql => Prisma.sql`length(${keyOf(text)}) < 3`;

/**
 * Statements that each find ids of sensors by an index: a serial by any part of it, without regard to case, spaces and
 * dashes (see migration 0053; what is shorter than its pieces by its beginning and end), as it was taken in or as a
 * certificate was corrected to; a tag by its beginning.
 */
export const sensorWays = (text: string, most: number): readonly Prisma.Sql[] => {
  const key = keyOf(text);
  const where = (condition: Prisma.Sql) => Prisma.sql`SELECT x.id FROM sensor x WHERE ${condition}`;
  return [
    where(Prisma.sql`${isShort(text)} AND ${beginsWith(Prisma.sql`x.serial_key`, key)}`),
    where(Prisma.sql`${isShort(text)} AND ${beginsWith(Prisma.sql`x.serial_tail`, tailOf(text))}`),
    Prisma.sql`SELECT sensors_with_serial_part(${key}, ${most + 1}::int)`,
    where(beginsWith(Prisma.sql`x.tag`, upperOf(text))),
    correctedTo(text),
  ];
};

/** The same of one sensor, where a list is read in its own order. What corrections found is looked up once, not per row. */
export const sensorHas = (sensor: Prisma.Sql, text: string): Prisma.Sql => {
  const serial = Prisma.sql`${sensor}.serial_key`;
  return Prisma.sql`(
    ${beginsWith(serial, keyOf(text))}
    OR ${beginsWith(Prisma.sql`${sensor}.serial_tail`, tailOf(text))}
    OR (NOT ${isShort(text)} AND position(${keyOf(text)} IN ${serial}) > 0)
    OR ${beginsWith(Prisma.sql`${sensor}.tag`, upperOf(text))}
    OR ${sensor}.id = ANY (ARRAY(${correctedTo(text)})))`;
};
