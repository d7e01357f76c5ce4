import type { Tx } from "../in-scope";

/** What the certificate of each sensor has to say because the customer insisted, by sensor id, in the order of time. */
export const disclaimersOf = async (
  tx: Tx,
  sensors: readonly { readonly id: string; readonly line: { readonly orderId: string } }[],
): Promise<ReadonlyMap<string, readonly string[]>> => {
  const holds = await tx.hold.findMany({
    where: {
      orderId: { in: [...new Set(sensors.map(({ line }) => line.orderId))] },
      OR: [{ sensorId: null }, { sensorId: { in: sensors.map(({ id }) => id) } }],
    },
    select: { id: true, orderId: true, sensorId: true },
  });
  const releases = await tx.holdRelease.findMany({
    where: { holdId: { in: holds.map(({ id }) => id) }, outcome: "go-on-with-disclaimer" },
    orderBy: [{ releasedAt: "asc" }, { id: "asc" }],
    select: { holdId: true, disclaimer: true },
  });
  return new Map(
    sensors.map((sensor) => [
      sensor.id,
      releases.flatMap(({ holdId, disclaimer }) => {
        const hold = holds.find(({ id }) => id === holdId);
        const stands = hold?.orderId === sensor.line.orderId && (hold.sensorId ?? sensor.id) === sensor.id;
        return stands ? [disclaimer] : [];
      }),
    ]),
  );
};
