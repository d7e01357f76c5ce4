import { type LotSensor, type OpenLot, openLots } from "@/lib/domain/certificate/open-lots";
import { decideNotHeld } from "@/lib/domain/hold/decide-not-held";
import { readLineOptions } from "@/lib/domain/order/options";
import { holdsOf, type SensorHold } from "../hold/holds-of";
import type { Tx } from "../in-scope";
import type { ReviewRun } from "./load-review-run";
import { reviewedContent } from "./reviewed-content";

/** It left this review, kept or put back: nothing is signed for it here. */
export const leftReview = ({ decisions }: Pick<ReviewRun, "decisions">, sensorId: string) =>
  decisions.findLast(
    (one) => one.sensorId === sensorId && (one.decision === "kept" || one.decision === "put-back"),
  );

const sensorOf = async (
  tx: Tx,
  review: ReviewRun,
  holds: readonly SensorHold[],
  { id, tag, line }: ReviewRun["sensors"][number],
): Promise<LotSensor> => {
  const isDone =
    review.certificates.some(({ sensorId }) => sensorId === id) || leftReview(review, id) !== undefined;
  const held = isDone
    ? null
    : decideNotHeld(
        holds.filter(({ sensorId }) => sensorId === id),
        "signed off",
      );
  const content = isDone || !held?.ok ? held : await reviewedContent(tx, review, [id]);
  return {
    ...{ id, tag, lineId: line.id, isPerLot: true, isDone },
    obstacle: content === null || content.ok ? "" : content.refusal.message,
  };
};

/** What one certificate for the lot of this line would cover in this run; null: the line asks for none, or nothing is open. */
export const loadOpenLot = async (tx: Tx, review: ReviewRun, lineId: string): Promise<OpenLot | null> => {
  const own = review.sensors.filter(({ line }) => line.id === lineId);
  if (readLineOptions(own[0]?.line.options ?? "{}").report !== "per-lot") return null;
  const sensors: LotSensor[] = [];
  const holds = await holdsOf(
    tx,
    own.map(({ id }) => id),
  );
  for (const sensor of own) sensors.push(await sensorOf(tx, review, holds, sensor));
  return openLots(sensors)[0] ?? null;
};
