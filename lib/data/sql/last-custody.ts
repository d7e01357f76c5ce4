import type { Tx } from "../in-scope";

export type LastCustodyRow = {
  readonly sensorId: string;
  readonly kind: string;
  readonly placeCode: string;
  readonly placeName: string;
  readonly fromWhom: string;
  readonly toWhom: string;
  readonly happenedAt: Date;
};

/** The last line of each sensor's log, by its index: one look a sensor, however long the logs are. */
export const lastCustodyRows = (tx: Tx, sensorIds: readonly string[]): Promise<LastCustodyRow[]> =>
  tx.$queryRaw<LastCustodyRow[]>`
    SELECT s.id::text AS "sensorId", c.kind, coalesce(p.code, '') AS "placeCode", coalesce(p.name, '') AS "placeName",
           c.from_whom AS "fromWhom", c.to_whom AS "toWhom", c.happened_at AS "happenedAt"
      FROM unnest(${[...sensorIds]}::uuid[]) AS s (id)
      CROSS JOIN LATERAL (SELECT * FROM custody_event WHERE sensor_id = s.id ORDER BY id DESC LIMIT 1) AS c
      LEFT JOIN storage_place p ON p.id = c.place_id`;
