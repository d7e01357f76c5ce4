import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { reviewEvents } from "@/lib/domain/review/events";
import type { Tx } from "../in-scope";
import { completeFinishedOrder } from "../order/complete-finished-order";
import { certificatesOfSensors } from "../parts/certificates-of-sensors";
import { sensorsGone } from "../parts/sensors-gone";
import { setSensorState } from "../sensor/set-state";
import type { ReviewRun } from "./load-review-run";

/** Certificates that the sensors of this run are on: one of a lot counts once. */
const certificatesOfRun = async (tx: Tx, review: ReviewRun): Promise<number> => {
  const all = await certificatesOfSensors(
    tx,
    review.sensors.map(({ id }) => id),
  );
  return new Set(all.map(({ id }) => id)).size;
};

/** When the last certifiable sensor is signed off or has left: the run is closed, and sensors without any result are put back. */
const closeRun = async (tx: Tx, review: ReviewRun, signedNow: readonly string[]): Promise<AuditEvent[]> => {
  const signed = new Set([...signedNow, ...review.certificates.map(({ sensorId }) => sensorId)]);
  const measured = new Set(
    review.evaluation?.results.filter(({ state }) => state === "measured").map(({ sensorId }) => sensorId),
  );
  const gone = await sensorsGone(tx, review.run.id);
  if ([...measured].some((sensorId) => !signed.has(sensorId) && !gone.has(sensorId))) return [];
  const putBack = review.sensors.filter(
    ({ id, state }) => state === "in-review" && !measured.has(id) && !gone.has(id),
  );
  if (putBack.length > 0)
    await setSensorState(
      tx,
      putBack.map(({ id }) => id),
      ["in-review"],
      "received",
    );
  await tx.run.update({
    where: { id: review.run.id },
    data: { state: "signed-off", version: { increment: 1 } },
  });
  return [
    eventOf(reviewEvents.closed, review.run.id, {
      run: review.run.number,
      certificates: await certificatesOfRun(tx, review),
      putBack: putBack.map(({ tag }) => tag),
    }),
  ];
};

/** Orders whose last sensor was just issued are complete. Locked in the order of their numbers. */
const completeOrders = async (
  tx: Tx,
  review: ReviewRun,
  signedNow: readonly string[],
): Promise<AuditEvent[]> => {
  const numbers = new Set(
    review.sensors.filter(({ id }) => signedNow.includes(id)).map(({ line }) => line.order.number),
  );
  const events: AuditEvent[] = [];
  for (const number of [...numbers].sort()) events.push(...(await completeFinishedOrder(tx, number)));
  return events;
};

/** What follows from a sign-off for the run and its orders; the events say so. */
export const closeReview = async (
  tx: Tx,
  review: ReviewRun,
  signedNow: readonly string[],
): Promise<readonly AuditEvent[]> => [
  ...(await closeRun(tx, review, signedNow)),
  ...(await completeOrders(tx, review, signedNow)),
];
