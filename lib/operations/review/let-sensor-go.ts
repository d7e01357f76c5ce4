import { sensorsGone } from "@/lib/data/parts/sensors-gone";
import { closeReview } from "@/lib/data/review/close-review";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { setSensorState } from "@/lib/data/sensor/set-state";
import { lockRun } from "@/lib/data/sql/lock-run";
import { eventOf } from "@/lib/domain/audit/define-event";
import { decideLeaveReview } from "@/lib/domain/parts/decide-leave-review";
import { partsEvents } from "@/lib/domain/parts/events";
import { LeaveReviewInput } from "@/lib/domain/parts/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideReviewable } from "@/lib/domain/review/decide-reviewable";
import { actorIdOf } from "@/lib/domain/staff/actor";
import { defineOperation } from "../operation";

/**
 * One sensor leaves the review, the others go on: put back to be measured again, or with its results kept for its
 * certificate while it is annealed or measured at the rest of its setpoints. Nothing measured is lost either way.
 */
export const letSensorGo = defineOperation({
  name: "review/let-sensor-go",
  permission: "review.decide",
  input: LeaveReviewInput,
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
    const sensor = review.sensors.find(({ id }) => id === input.sensorId);
    const results = review.evaluation.results.filter(({ sensorId }) => sensorId === input.sensorId);
    const tag = demand(
      decideLeaveReview({
        tag: sensor?.tag ?? null,
        state: sensor?.state ?? "",
        hasCertificate: review.certificates.some(({ sensorId }) => sensorId === input.sensorId),
        hasLeft: (await sensorsGone(tx, review.run.id)).has(input.sensorId),
        results: input.results,
        measured: results.filter(({ state }) => state === "measured").length,
      }),
    );
    await tx.reviewDecision.create({
      data: {
        runId: review.run.id,
        evaluationId: review.evaluation.id,
        sensorId: input.sensorId,
        decision: input.results,
        reason: input.reason,
        decidedById: actorIdOf(actor),
        decidedAt: now,
      },
    });
    await setSensorState(tx, [input.sensorId], ["in-review"], "received");
    const left = eventOf(partsEvents.leftReview, review.run.id, {
      run: review.run.number,
      sensor: tag,
      results: input.results,
      reason: input.reason,
    });
    return { value: { tag, results: input.results }, events: [left, ...(await closeReview(tx, review, []))] };
  },
});
