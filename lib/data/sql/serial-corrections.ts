import type { Tx } from "@/lib/data/in-scope";

export type SerialCorrectionRow = {
  readonly sensor_id: string;
  readonly serial: string;
  readonly signed_at: Date;
  /** As it was taken in. */
  readonly taken_in: string;
};

/** What each certificate that followed another one calls its sensors, the first first: `corrected-serials` gives the last. */
export const serialCorrectionRows = (tx: Tx, customerId: string): Promise<SerialCorrectionRow[]> =>
  tx.$queryRaw<SerialCorrectionRow[]>`
    SELECT sensor.id AS sensor_id, said.item ->> 'serial' AS serial, certificate.signed_at, sensor.serial AS taken_in
      FROM certificate_ending ending
      JOIN certificate ON certificate.id = ending.successor_id
     CROSS JOIN LATERAL (
       SELECT certificate.content::json -> 'item' AS item
       UNION ALL
       SELECT one -> 'item' FROM json_array_elements(certificate.content::json -> 'sets') AS one
     ) AS said
      JOIN sensor ON sensor.tag = said.item ->> 'tag'
     WHERE ending.customer_id = ${customerId}::uuid AND sensor.customer_id = ${customerId}::uuid
     ORDER BY certificate.number`;
