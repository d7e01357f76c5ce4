import { isDone, type SensorState } from "@/lib/domain/sensor/transitions";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "../view";
import { describeHolds, holdRows } from "./holds";

const mayOf = (actor: Actor) => ({
  mayPlace: actor.kind === "staff" && may(actor.roles, "hold.place"),
  mayRelease: actor.kind === "staff" && may(actor.roles, "hold.release"),
  mayDispose: actor.kind === "staff" && may(actor.roles, "sensor.release"),
});

/** What stands still of one sensor, its own holds and those of its order. */
export const sensorHoldsView = (actor: Actor, tag: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const sensor = found(
      await tx.sensor.findUnique({
        where: { tag },
        select: { id: true, state: true, line: { select: { order: true } } },
      }),
    );
    const { order } = sensor.line;
    const isOver = isDone(sensor.state as SensorState) || order.state !== "accepted";
    return {
      orderNumber: order.number,
      tag,
      canBegin: !isOver,
      holds: await describeHolds(tx, await holdRows(tx, order.id, sensor.id)),
      ...mayOf(actor),
    };
  });

/** What stands still of a whole order, its sensors' holds included. */
export const orderHoldsView = (actor: Actor, number: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const order = found(await tx.order.findUnique({ where: { number } }));
    return {
      orderNumber: number,
      tag: "",
      canBegin: order.state === "accepted" || order.state === "recorded",
      holds: await describeHolds(tx, await holdRows(tx, order.id, null)),
      ...mayOf(actor),
    };
  });

export type HoldsOn = Awaited<ReturnType<typeof orderHoldsView>>;
