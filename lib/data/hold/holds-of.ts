import type { StandingHold } from "@/lib/domain/hold/decide-not-held";
import type { Tx } from "../in-scope";

export type SensorHold = StandingHold & { readonly sensorId: string };

/** What keeps each of these sensors from going on: holds on itself and on its whole order. */
export const holdsOf = async (tx: Tx, sensorIds: readonly string[]): Promise<readonly SensorHold[]> => {
  const sensors = await tx.sensor.findMany({
    where: { id: { in: [...sensorIds] } },
    select: { id: true, tag: true, line: { select: { orderId: true, order: { select: { number: true } } } } },
    orderBy: { tag: "asc" },
  });
  const orderIds = [...new Set(sensors.map(({ line }) => line.orderId))];
  const holds = await tx.hold.findMany({
    where: { orderId: { in: orderIds }, OR: [{ sensorId: null }, { sensorId: { in: [...sensorIds] } }] },
    orderBy: [{ placedAt: "asc" }, { id: "asc" }],
  });
  const releases = await tx.holdRelease.findMany({
    where: { holdId: { in: holds.map(({ id }) => id) } },
    select: { holdId: true, outcome: true },
  });
  const stories = await tx.nonconformity.findMany({
    where: { id: { in: holds.flatMap(({ nonconformityId }) => nonconformityId ?? []) } },
    select: { id: true, number: true },
  });
  const outcomes = new Map(releases.map(({ holdId, outcome }) => [holdId, outcome]));
  const standing = holds.filter(({ id }) => [undefined, "return-unmeasured"].includes(outcomes.get(id)));
  return sensors.flatMap((sensor) =>
    standing
      .filter((hold) => hold.orderId === sensor.line.orderId && (hold.sensorId ?? sensor.id) === sensor.id)
      .map((hold) => ({
        holdId: hold.id,
        sensorId: sensor.id,
        tag: sensor.tag,
        orderNumber: sensor.line.order.number,
        reason: hold.reason,
        isOfOrder: hold.sensorId === null,
        isToBeReturned: outcomes.has(hold.id),
        nonconformity: stories.find(({ id }) => id === hold.nonconformityId)?.number ?? null,
      })),
  );
};
