import { z } from "zod";
import { sensorsGone } from "@/lib/data/parts/sensors-gone";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { setSensorState } from "@/lib/data/sensor/set-state";
import { lockRun } from "@/lib/data/sql/lock-run";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideReviewable } from "@/lib/domain/review/decide-reviewable";
import { reviewEvents } from "@/lib/domain/review/events";
import { actorIdOf } from "@/lib/domain/staff/actor";
import { seenWhole } from "@/lib/domain/typed-text";
import { defineOperation } from "../operation";

/** Back to the technician with a reason. Evaluation, results and readings stay; what is signed off stays signed off. */
export const returnRun = defineOperation({
  name: "review/return",
  permission: "review.decide",
  input: z.strictObject({
    runId: z.uuid(),
    evaluationId: z.uuid(),
    reason: z
      .string()
      .trim()
      .min(10, "Say what the technician should look at, in a sentence.")
      .max(2000, "At most 2000 characters.")
      .superRefine(seenWhole),
  }),
  perform: async ({ actor, now, tx }, input) => {
    const locked = await lockRun(tx, input.runId);
    const review = locked ? await loadReviewRun(tx, input.runId) : null;
    if (!review?.evaluation) throw new Refused({ code: "not-found", message: "This run is not here." });
    demand(
      decideReviewable({
        runState: review.run.state,
        evaluationId: review.evaluation.id,
        seenEvaluationId: input.evaluationId,
      }),
    );
    await tx.reviewDecision.create({
      data: {
        runId: review.run.id,
        evaluationId: review.evaluation.id,
        decision: "returned",
        reason: input.reason,
        decidedById: actorIdOf(actor),
        decidedAt: now,
      },
    });
    await tx.run.update({
      where: { id: review.run.id },
      data: { state: "returned", version: { increment: 1 } },
    });
    const gone = await sensorsGone(tx, review.run.id);
    const inReview = review.sensors
      .filter(({ id, state }) => !gone.has(id) && state === "in-review")
      .map(({ id }) => id);
    if (inReview.length > 0) await setSensorState(tx, inReview, ["in-review"], "evaluated");
    return {
      value: { runNumber: review.run.number },
      events: [
        eventOf(reviewEvents.returned, review.run.id, {
          run: review.run.number,
          evaluation: review.evaluation.sequence,
          reason: input.reason,
        }),
      ],
    };
  },
});
