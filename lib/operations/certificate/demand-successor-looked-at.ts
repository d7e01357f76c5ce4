import type { Amended } from "@/lib/data/amendment/load-amended";
import type { CertificateRow } from "@/lib/data/amendment/load-measured";
import { evaluationsOf } from "@/lib/data/amendment/sensors-on";
import type { Tx } from "@/lib/data/in-scope";
import { loadRemarks } from "@/lib/data/review/load-remarks";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { demand } from "@/lib/domain/refusal";
import { decideSettled } from "@/lib/domain/review/decide-settled";
import { demandLookedAt } from "./demand-looked-at";
import { demandNotInDoubt } from "./demand-not-in-doubt";

/**
 * New results are opened by whoever signs for them, as in the review of a run, and no remark is left open on any. Results
 * that the earlier certificate stated already were opened then; what they stand on may have come into doubt since.
 */
export const demandSuccessorLookedAt = async (
  tx: Tx,
  old: CertificateRow,
  { members }: Amended,
  personId: string,
): Promise<void> => {
  const before = await evaluationsOf(tx, old);
  for (const evaluationId of new Set(members.map((one) => one.evaluationId))) {
    const own = members.filter((one) => one.evaluationId === evaluationId);
    const review = await loadReviewRun(tx, own[0]?.runId ?? "", evaluationId);
    if (!review) throw new Error("the run of a certificate is not there");
    const sensorIds = own.map(({ sensorId }) => sensorId);
    if (before.has(evaluationId)) {
      await demandNotInDoubt(tx, review);
      const tags = review.sensors.filter(({ id }) => sensorIds.includes(id)).map(({ tag }) => tag);
      demand(decideSettled(await loadRemarks(tx, review), tags));
    } else await demandLookedAt(tx, review, personId, sensorIds);
  }
};
