import type { HoldKind } from "@/lib/domain/hold/labels";
import type { Tx } from "../in-scope";
import { isUuid } from "../is-uuid";
import { lockName } from "../sql/lock-name";

/** One hold with what decides how it may end, locked against a second release at once; null: not there. */
export const loadHoldToEnd = async (tx: Tx, id: string) => {
  const hold = isUuid(id) ? await tx.hold.findUnique({ where: { id } }) : null;
  if (!hold) return null;
  await lockName(tx, `hold ${hold.orderId}`);
  const release = await tx.holdRelease.findUnique({ where: { holdId: id } });
  const questions = await tx.question.findMany({ where: { holdId: id }, select: { id: true } });
  const answers = await tx.answer.findMany({ where: { questionId: { in: questions.map((one) => one.id) } } });
  const order = await tx.order.findUniqueOrThrow({
    where: { id: hold.orderId },
    select: { number: true, state: true },
  });
  const sensors = await tx.sensor.findMany({
    where: hold.sensorId ? { id: hold.sensorId } : { line: { orderId: hold.orderId } },
    select: { tag: true, state: true },
  });
  const nonconformity = hold.nonconformityId
    ? await tx.nonconformity.findUniqueOrThrow({
        where: { id: hold.nonconformityId },
        select: { number: true },
      })
    : null;
  return {
    id,
    customerId: hold.customerId,
    orderNumber: order.number,
    tag: hold.sensorId ? (sensors[0]?.tag ?? "") : "",
    kind: hold.kind as HoldKind,
    isReleased: release !== null,
    hasOpenQuestion: answers.length < questions.length,
    isInsisted: answers.some(({ insists }) => insists),
    isIssued: sensors.length > 0 && sensors.every(({ state }) => state === "issued" || state === "collected"),
    inReview: sensors.flatMap(({ state, tag }) => (state === "in-review" ? [tag] : [])),
    isOfSensor: hold.sensorId !== null,
    isOrderInWork: order.state === "accepted",
    nonconformity: nonconformity?.number ?? null,
  };
};
