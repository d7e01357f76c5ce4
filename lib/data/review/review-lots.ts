import { contentHash } from "@/lib/domain/certificate/content-hash";
import { lotPartText } from "@/lib/domain/certificate/lot-part";
import { type LotSensor, openLots } from "@/lib/domain/certificate/open-lots";
import { decideRollEnds } from "@/lib/domain/order/decide-roll-ends";
import { loadLotPart } from "../certificate/load-lot-part";
import { hex } from "../hex";
import type { Tx } from "../in-scope";
import { loadRollsOf } from "../roll/load-rolls";
import { sha256 } from "../sha256";
import type { ReviewRun } from "./load-review-run";
import { reviewedContent } from "./reviewed-content";

/**
 * The one certificate of each lot in this run: what it covers, which part of the lot it is, the hash of what it would
 * say, and why it cannot be signed where it cannot. Nothing of a lot is signed for singly.
 */
export const reviewLots = async (tx: Tx, review: ReviewRun, sensors: readonly LotSensor[]) => {
  const lots = [];
  for (const { lineId, sensors: own, leftOut } of openLots(sensors)) {
    const ids = own.map(({ id }) => id);
    const line = review.sensors.find((one) => one.line.id === lineId)?.line;
    const [content, ends] =
      own.length > 0 && line
        ? [
            await reviewedContent(tx, review, ids),
            decideRollEnds(await loadRollsOf(tx, line.order), ids, "per-lot"),
          ]
        : [null, null];
    const refused = [content, ends].flatMap((one) => (one && !one.ok ? [one.refusal.message] : []));
    lots.push({
      lineId,
      sensorIds: ids,
      tags: own.map(({ tag }) => tag),
      customer: line?.order.customer.name ?? "",
      part: lotPartText(await loadLotPart(tx, lineId, own.length)),
      /** Of what its certificate would say; null: it cannot be composed. */
      draftHash: content?.ok ? hex(contentHash(content.value.content, sha256)) : null,
      /** Why it cannot be signed, with the remedy; empty where it can. */
      obstacle: own.length === 0 ? "No sensor of this lot can be signed for now." : refused.join(" "),
      findings: content?.ok ? content.value.bundle.findings : [],
      leftOut: leftOut.map(({ tag, obstacle }) => ({ tag, why: obstacle })),
    });
  }
  return lots;
};
