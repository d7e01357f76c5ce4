import type { Tx } from "../in-scope";

export type StoredSensorRow = { readonly tag: string; readonly placeId: string };

/** Which sensors lie in a storage place now: those whose last line says so. */
export const storedSensors = (tx: Tx, limit: number): Promise<StoredSensorRow[]> =>
  tx.$queryRaw<StoredSensorRow[]>`
    SELECT s.tag, c.place_id::text AS "placeId"
      FROM sensor s
      CROSS JOIN LATERAL (SELECT kind, place_id FROM custody_event WHERE sensor_id = s.id ORDER BY id DESC LIMIT 1) AS c
     WHERE s.state <> 'collected' AND c.kind = 'stored'
     ORDER BY s.tag LIMIT ${limit}`;
