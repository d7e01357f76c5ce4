import { z } from "zod";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { lockRun } from "@/lib/data/sql/lock-run";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideReviewable } from "@/lib/domain/review/decide-reviewable";
import { reviewEvents } from "@/lib/domain/review/events";
import { actorIdOf } from "@/lib/domain/staff/actor";
import { defineOperation } from "../operation";

/** A signatory had one result before them, with all it rests on: what the sign-off asks for. Sent by the page itself. */
export const openResult = defineOperation({
  name: "review/open-result",
  permission: "review.decide",
  input: z.strictObject({
    runId: z.uuid(),
    evaluationId: z.uuid(),
    sensorId: z.uuid(),
    setpointId: z.uuid(),
  }),
  perform: async ({ actor, now, tx }, input) => {
    const locked = await lockRun(tx, input.runId);
    const review = locked ? await loadReviewRun(tx, input.runId) : null;
    const { evaluation } = review ?? {};
    const result = evaluation?.results.find(
      ({ sensorId, setpointId }) => sensorId === input.sensorId && setpointId === input.setpointId,
    );
    if (!review || !evaluation || !result)
      throw new Refused({ code: "not-found", message: "This result is not here." });
    demand(
      decideReviewable({
        runState: review.run.state,
        evaluationId: evaluation.id,
        seenEvaluationId: input.evaluationId,
      }),
    );
    const opening = {
      evaluationId: evaluation.id,
      sensorId: input.sensorId,
      setpointId: input.setpointId,
      openedById: actorIdOf(actor),
    };
    if (await tx.reviewOpening.findFirst({ where: opening, select: { id: true } }))
      throw new Refused({ code: "wrong-state", message: "You have opened this result already." });
    await tx.reviewOpening.create({ data: { ...opening, runId: review.run.id, openedAt: now } });
    return {
      value: { sensor: result.point.sensor, setpoint: result.point.setpoint },
      events: [
        eventOf(reviewEvents.resultOpened, review.run.id, {
          run: review.run.number,
          evaluation: evaluation.sequence,
          sensor: result.point.sensor,
          setpoint: result.point.setpoint,
        }),
      ],
    };
  },
});
