import type { Tx } from "@/lib/data/in-scope";
import { Prisma } from "@/lib/generated/prisma/client";
import { correctedItems } from "./corrected-items";

export type CorrectedSerialRow = { readonly sensor_id: string; readonly serial: string };

/**
 * The serial that the newest certificate that followed another one gives a sensor. A correction changes no sensor's own
 * record: that is what was read when it came.
 */
export const correctedSerials = (customerId: string): Prisma.Sql => Prisma.sql`
    SELECT DISTINCT ON (sensor.id) sensor.id AS sensor_id, said.item ->> 'serial' AS serial
    ${correctedItems(customerId)}
     ORDER BY sensor.id, certificate.number DESC`;

export const correctedSerialRows = (tx: Tx, customerId: string): Promise<CorrectedSerialRow[]> =>
  tx.$queryRaw<CorrectedSerialRow[]>(correctedSerials(customerId));
