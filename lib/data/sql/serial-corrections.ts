import type { Tx } from "@/lib/data/in-scope";
import { correctedItems } from "./corrected-items";

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
    ${correctedItems(customerId)}
     ORDER BY certificate.number`;
