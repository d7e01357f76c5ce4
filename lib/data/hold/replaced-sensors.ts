import type { Tx } from "../in-scope";

/** Sensors of these orders that another one is awaited for, or came for. */
export const replacedSensors = async (tx: Tx, orderIds: readonly string[]): Promise<ReadonlySet<string>> => {
  const holds = await tx.hold.findMany({
    where: { orderId: { in: [...orderIds] }, sensorId: { not: null } },
    select: { id: true, sensorId: true },
  });
  if (holds.length === 0) return new Set();
  const ends = await tx.holdRelease.findMany({
    where: { holdId: { in: holds.map(({ id }) => id) }, awaitsAnother: true },
    select: { holdId: true },
  });
  const ended = new Set(ends.map(({ holdId }) => holdId));
  return new Set(holds.flatMap(({ id, sensorId }) => (sensorId !== null && ended.has(id) ? [sensorId] : [])));
};
