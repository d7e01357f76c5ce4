import { z } from "zod";
import { loadReplacing } from "@/lib/data/amendment/load-replacing";
import { lockRun } from "@/lib/data/sql/lock-run";
import { eventOf } from "@/lib/domain/audit/define-event";
import { readStoredPoint } from "@/lib/domain/evidence/read-stored-point";
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
    await lockRun(tx, input.runId);
    // Only what is asked here: a run is opened result by result, and loading all of it each time would be felt.
    const run = await tx.run.findUnique({
      where: { id: input.runId },
      select: { number: true, state: true },
    });
    const evaluation = await tx.evaluation.findFirst({
      where: { runId: input.runId },
      orderBy: { sequence: "desc" },
      select: { id: true, sequence: true },
    });
    const result = await tx.result.findFirst({
      where: {
        evaluationId: evaluation?.id ?? input.evaluationId,
        sensorId: input.sensorId,
        setpointId: input.setpointId,
      },
      select: { point: true },
    });
    if (!run || !evaluation || !result)
      throw new Refused({ code: "not-found", message: "This result is not here." });
    const replacing = run.state === "signed-off" ? await loadReplacing(tx, input.runId, evaluation.id) : [];
    demand(
      decideReviewable({
        isReplacing: replacing.some(({ sensorId }) => sensorId === input.sensorId),
        runState: run.state,
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
    await tx.reviewOpening.create({ data: { ...opening, runId: input.runId, openedAt: now } });
    const { sensor, setpoint } = readStoredPoint(result.point);
    return {
      value: { sensor, setpoint },
      events: [
        eventOf(reviewEvents.resultOpened, input.runId, {
          run: run.number,
          evaluation: evaluation.sequence,
          sensor,
          setpoint,
        }),
      ],
    };
  },
});
