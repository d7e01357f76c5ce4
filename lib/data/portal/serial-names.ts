import type { Tx } from "../in-scope";
import { correctedSerialRows } from "../sql/corrected-serials";

export type SerialNames = {
  /** Whose certificates were corrected to this serial. */
  readonly idsOf: (serials: readonly string[]) => readonly string[];
  /** As the newest certificate says, where one was corrected; as it was taken in, where none was. */
  readonly nameOf: (sensor: { readonly id: string; readonly serial: string }) => string;
};

/** What a customer's sensors are called since their certificates were corrected. */
export const loadSerialNames = async (tx: Tx, customerId: string): Promise<SerialNames> => {
  const corrected = new Map(
    (await correctedSerialRows(tx, customerId)).map((row) => [row.sensor_id, row.serial]),
  );
  return {
    idsOf: (serials) => [...corrected].flatMap(([id, serial]) => (serials.includes(serial) ? [id] : [])),
    nameOf: ({ id, serial }) => corrected.get(id) ?? serial,
  };
};
