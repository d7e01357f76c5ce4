import type { Tx } from "@/lib/data/in-scope";
import { loadDuty } from "@/lib/data/review/load-duty";
import type { ReviewRun } from "@/lib/data/review/load-review-run";
import { nextToOpen } from "@/lib/data/review/next-to-open";
import { isReplacing, signedTags } from "@/lib/data/review/review-summary";
import { printedDifference } from "@/lib/domain/review/printed-difference";
import { resultKey } from "@/lib/domain/review/result-name";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";

type Result = NonNullable<ReviewRun["evaluation"]>["results"][number];

/** What the page of one result tells whoever reviews: the last calibration beside it, why it must be opened, remarks. */
export const resultDuty = async (tx: Tx, review: ReviewRun, actor: Actor, result: Result) => {
  const duty = await loadDuty(tx, review, actor);
  const { point } = result;
  const key = resultKey(point);
  const earlier = duty.earlier.get(key);
  const isWaiting = review.run.state === "submitted" || isReplacing(review, result.sensorId);
  return {
    ids: {
      runId: review.run.id,
      evaluationId: result.evaluationId,
      sensorId: result.sensorId,
      setpointId: result.setpointId,
    },
    difference: earlier && point.state === "measured" ? printedDifference(point, earlier) : null,
    /** What names it, in words. */
    because: duty.exceptions
      .filter(
        ({ point: first, others = [], isNote }) =>
          !isNote && first && [first, ...others].some((one) => resultKey(one) === key),
      )
      .map(({ subject, text }) => `${subject}: ${text}`),
    isDrawn: duty.drawn.has(key),
    /** The certificate that this result is to be stated in place of. */
    replaces: review.replacing.find(({ sensorId }) => sensorId === result.sensorId)?.certificate ?? null,
    isOpened: duty.opened.has(key),
    /** Whether an opening by whoever asks is to be recorded. */
    records: isWaiting && actor.kind === "staff" && may(actor.roles, "review.decide"),
    mustOpen: duty.mustOpen.length,
    opened: duty.mustOpen.length - duty.unopened.length,
    nextToOpen: nextToOpen(review, duty, point),
    mayRemark: (isWaiting || review.run.state === "returned") && !signedTags(review).has(point.sensor),
    remarks: duty.remarks.filter(
      (one) =>
        one.sensorId === null ||
        (one.sensorId === result.sensorId &&
          (one.setpointId === null || one.setpointId === result.setpointId)),
    ),
  };
};

export type Remark = Awaited<ReturnType<typeof resultDuty>>["remarks"][number];
