import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";
import { keyOf, keyOfText } from "./page-fragments";

/**
 * The serials that signed corrections gave, `given.serial`, and whose. A correction changes no sensor's own record, so no
 * column of a sensor has them. All that was ever asked for is read: short texts, of few certificates in a hundred, and
 * no certificate is opened. The sensor is the one that the certificate is filed under, by key: a join could read them all.
 */
const given = Prisma.sql`(
  SELECT (SELECT n.sensor_id FROM certificate n WHERE n.id = a.certificate_id) AS sensor_id,
         a.corrections::json ->> 'serial' AS serial, a.asked_at
    FROM amendment a
   WHERE a.corrections::json ->> 'serial' IS NOT NULL
     AND EXISTS (SELECT FROM amendment_decision d WHERE d.amendment_id = a.id AND d.outcome = 'signed-off')) AS given`;

/** As the columns of a sensor hold its own, and found by the same rule: what is short at the beginning and the end alone. */
const serialKey = keyOfText(Prisma.sql`given.serial`);
const holds = (text: string): Prisma.Sql => {
  const key = keyOf(text);
  return Prisma.sql`CASE WHEN length(${key}) >= 3 THEN position(${key} IN ${serialKey}) > 0
    ELSE ${key} <> '' AND (starts_with(${serialKey}, ${key}) OR right(${serialKey}, length(${key})) = ${key}) END`;
};

/** Ids of sensors that a correction gave such a serial. */
export const correctedTo = (text: string): Prisma.Sql =>
  Prisma.sql`SELECT given.sensor_id FROM ${given} WHERE ${holds(text)}`;

/** The same with what it gave, and whether that is the word itself, as a table to select from. */
export const correctedSensors = (text: string, most: number): Prisma.Sql => Prisma.sql`(
  SELECT given.sensor_id, given.serial, ${serialKey} = ${keyOf(text)} AS is_it
    FROM ${given} WHERE ${holds(text)} ORDER BY is_it DESC, given.serial LIMIT ${most})`;

/** What corrections called these sensors, the first first. */
export const correctedNames = async (
  tx: Tx,
  sensorIds: readonly string[],
): Promise<ReadonlyMap<string, readonly string[]>> => {
  const rows = await tx.$queryRaw<{ id: string; serials: string[] }[]>`
    SELECT given.sensor_id::text AS id, array_agg(given.serial ORDER BY given.asked_at) AS serials
      FROM ${given} WHERE given.sensor_id = ANY (${[...sensorIds]}::uuid[]) GROUP BY given.sensor_id`;
  return new Map(rows.map(({ id, serials }) => [id, serials]));
};
