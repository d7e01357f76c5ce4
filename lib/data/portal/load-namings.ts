import type { Naming } from "@/lib/domain/recall/renamed";
import type { Tx } from "../in-scope";
import { serialCorrectionRows } from "../sql/serial-corrections";

/**
 * What a customer's sensors that bore one of these serials, or were corrected, have been called. Empty where nothing was
 * ever corrected: then everything is called as it was.
 */
export const loadNamings = async (
  tx: Tx,
  customerId: string,
  serials: readonly string[],
): Promise<readonly Naming[]> => {
  const corrections = await serialCorrectionRows(tx, customerId);
  if (corrections.length === 0) return [];
  const kept = await tx.sensor.findMany({
    where: { customerId, serial: { in: [...serials] } },
    select: { id: true, serial: true },
  });
  return [
    ...kept.map(({ id, serial }) => ({ sensorId: id, serial, since: null })),
    ...corrections.flatMap(({ sensor_id: sensorId, serial, signed_at, taken_in }) => [
      { sensorId, serial: taken_in, since: null },
      { sensorId, serial, since: signed_at },
    ]),
  ];
};
