import { holdsOf } from "@/lib/data/hold/holds-of";
import type { Tx } from "@/lib/data/in-scope";
import { loadReviewRun, type ReviewRun } from "@/lib/data/review/load-review-run";
import type { CertificateBundle } from "@/lib/domain/certificate/bundle";
import { performerSignedOff } from "@/lib/domain/certificate/texts";
import { decideNotHeld } from "@/lib/domain/hold/decide-not-held";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideReviewable } from "@/lib/domain/review/decide-reviewable";
import { decideSignOffStanding, type SignOffStanding } from "@/lib/domain/review/may-decide";
import { demandLookedAt } from "./demand-looked-at";
import { demandSignable, type Item, sensorsOnIt } from "./demand-signable";

type Asked = {
  readonly runId: string;
  readonly evaluationId: string;
  readonly items: readonly Item[];
  readonly exceptionReason: string;
};

/** One certificate that may be signed. */
export type ToSignOff = {
  readonly item: Item;
  readonly bundle: CertificateBundle;
  readonly standing: SignOffStanding;
};

/** Printed where the performer signed by the laboratory's policy; else empty. */
export const exceptionOf = ({ standing }: ToSignOff): string =>
  standing.kind === "exception" ? performerSignedOff : "";

/** All that was ticked may be signed by this person, as it was shown; or none of it. */
export const demandSignOff = async (
  tx: Tx,
  asked: Asked,
  signatoryId: string,
): Promise<{ readonly review: ReviewRun; readonly toSign: readonly ToSignOff[] }> => {
  const review = await loadReviewRun(tx, asked.runId);
  if (!review?.evaluation) throw new Refused({ code: "not-found", message: "This run is not here." });
  demand(
    decideReviewable({
      runState: review.run.state,
      evaluationId: review.evaluation.id,
      seenEvaluationId: asked.evaluationId,
    }),
  );
  const sensorIds = asked.items.flatMap(sensorsOnIt);
  demand(decideNotHeld(await holdsOf(tx, sensorIds), "signed off"));
  await demandLookedAt(tx, review, signatoryId, sensorIds);
  const toSign: ToSignOff[] = [];
  for (const item of asked.items) {
    const bundle = await demandSignable(tx, review, item);
    const standing = demand(
      decideSignOffStanding({
        signatoryId,
        performerIds: bundle.performerIds,
        performerMaySignOff: review.laboratory.performerMaySignOff,
        exceptionReason: asked.exceptionReason,
      }),
    );
    toSign.push({ item, bundle, standing });
  }
  return { review, toSign };
};
