import type { SensorHere } from "@/lib/domain/sensor/still-here";
import type { Tx } from "../in-scope";

/** The customer's sensors of other orders that have not left the house, the oldest first. */
export const sensorsStillHere = async (
  tx: Tx,
  order: { readonly id: string; readonly customerId: string },
): Promise<readonly SensorHere[]> =>
  tx.sensor.findMany({
    where: {
      customerId: order.customerId,
      state: { not: "collected" },
      line: { orderId: { not: order.id } },
    },
    select: { serial: true, tag: true, typeLetter: true },
    orderBy: { tag: "asc" },
  });
