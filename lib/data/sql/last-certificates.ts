import type { Tx } from "@/lib/data/in-scope";
import { correctedSerials } from "./corrected-serials";

export type LastCertificateRow = {
  readonly serial: string;
  readonly type_letter: string;
  readonly tag: string;
  readonly number: string;
  readonly performed_to: string;
  readonly order_number: string;
  readonly is_here: boolean;
  readonly stands: boolean;
};

/**
 * The last certificate of each of a customer's sensors, by serial and type: a sensor that comes again has a new label. A
 * certificate of a lot speaks of each of its sensors. Whoever comes again and is not certified yet is here. One that was
 * withdrawn or followed is the last only of a sensor of which none stands. A sensor goes by the serial it was corrected to.
 */
export const lastCertificateRows = (tx: Tx, customerId: string): Promise<LastCertificateRow[]> =>
  tx.$queryRaw<LastCertificateRow[]>`
    WITH spoken AS (
      SELECT sensor_id, id FROM certificate WHERE customer_id = ${customerId}::uuid
      UNION
      SELECT sensor_id, certificate_id FROM certificate_part WHERE customer_id = ${customerId}::uuid
    ), corrected AS (${correctedSerials(customerId)}),
    here AS (
      SELECT DISTINCT serial, type_letter FROM sensor
       WHERE customer_id = ${customerId}::uuid AND state NOT IN ('issued', 'collected')
    )
    SELECT DISTINCT ON (named.serial, sensor.type_letter)
           named.serial, sensor.type_letter, sensor.tag, certificate.number,
           certificate.performed_to, customer_order.number AS order_number,
           sensor.state NOT IN ('issued', 'collected') OR here.serial IS NOT NULL AS is_here,
           ending.id IS NULL AS stands
      FROM spoken
      JOIN certificate ON certificate.id = spoken.id
      JOIN sensor ON sensor.id = spoken.sensor_id
      LEFT JOIN corrected ON corrected.sensor_id = sensor.id
     CROSS JOIN LATERAL (SELECT coalesce(corrected.serial, sensor.serial) AS serial) AS named
      LEFT JOIN here ON here.serial = named.serial AND here.type_letter = sensor.type_letter
      JOIN customer_order ON customer_order.id = certificate.order_id
      LEFT JOIN certificate_ending ending ON ending.certificate_id = certificate.id
     ORDER BY named.serial, sensor.type_letter, stands DESC, certificate.performed_to DESC, certificate.number DESC`;
