import type { CertificateBundle } from "@/lib/domain/certificate/bundle";
import type { Tx } from "../in-scope";
import type { ReviewRun } from "../review/load-review-run";

type Decided = {
  readonly exceptionReason: string | null;
  readonly decidedById: string;
  readonly decidedAt: Date;
};

/**
 * Each measurement on the certificate is signed off, in whatever run it was made. A later measurement that the rule set
 * aside is put back with that as its reason, so that nothing of it is reported and its run can close.
 */
export const insertSignOffDecisions = async (
  tx: Tx,
  review: ReviewRun,
  { members, earlierCounts }: CertificateBundle,
  decided: Decided,
): Promise<void> => {
  for (const { sensorId, runId, evaluationId } of members)
    await tx.reviewDecision.create({
      data: { runId, evaluationId, sensorId, decision: "signed-off", ...decided },
    });
  for (const { sensorId, note } of earlierCounts)
    await tx.reviewDecision.create({
      data: {
        runId: review.run.id,
        evaluationId: review.evaluation?.id ?? "",
        sensorId,
        decision: "put-back",
        reason: note,
        decidedById: decided.decidedById,
        decidedAt: decided.decidedAt,
      },
    });
};
