import type { Tx } from "../in-scope";
import { certificatesOfSensors } from "../parts/certificates-of-sensors";
import { lockSensors } from "../sql/lock-sensors";

/** Locks the order's sensors, before the order as everywhere; tells which of them have a certificate. */
export const lockOrderSensors = async (
  tx: Tx,
  number: string,
): Promise<{ readonly sensorIds: readonly string[]; readonly certified: ReadonlySet<string> }> => {
  const sensors = await tx.sensor.findMany({ where: { line: { order: { number } } }, select: { id: true } });
  const sensorIds = sensors.map(({ id }) => id);
  if (sensorIds.length > 0) await lockSensors(tx, sensorIds);
  const certificates = await certificatesOfSensors(tx, sensorIds);
  return { sensorIds, certified: new Set(certificates.map(({ sensorId }) => sensorId)) };
};
