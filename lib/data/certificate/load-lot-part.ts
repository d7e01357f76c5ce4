import { type LotPart, lotPart } from "@/lib/domain/certificate/lot-part";
import type { Tx } from "../in-scope";
import { certificatesOfSensors } from "../parts/certificates-of-sensors";

/** Which part of the lot of this line a certificate of so many sensors would be, if it were signed now. */
export const loadLotPart = async (tx: Tx, lineId: string, covers: number): Promise<LotPart> => {
  const { quantity } = await tx.orderLine.findUniqueOrThrow({
    where: { id: lineId },
    select: { quantity: true },
  });
  const sensors = await tx.sensor.findMany({ where: { orderLineId: lineId }, select: { id: true } });
  const rows = await certificatesOfSensors(
    tx,
    sensors.map(({ id }) => id),
  );
  const earlier = [...new Set(rows.map(({ id }) => id))].map((id) =>
    rows.filter((row) => row.id === id).map(({ sensorId }) => sensorId),
  );
  return lotPart(earlier, covers, quantity);
};
