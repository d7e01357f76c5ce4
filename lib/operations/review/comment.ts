import { z } from "zod";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { isReplacing } from "@/lib/data/review/review-summary";
import { lockRun } from "@/lib/data/sql/lock-run";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand, Refused } from "@/lib/domain/refusal";
import { commentPlaces } from "@/lib/domain/review/comment-places";
import { decideComment } from "@/lib/domain/review/decide-comment";
import { reviewEvents } from "@/lib/domain/review/events";
import { actorIdOf } from "@/lib/domain/staff/actor";
import { seenWhole } from "@/lib/domain/typed-text";
import { defineOperation } from "../operation";

/** A remark at one number of a result, or of a run as a whole. Until it is settled, its sensor is not signed for. */
export const comment = defineOperation({
  name: "review/comment",
  permission: "review.read",
  input: z
    .strictObject({
      runId: z.uuid(),
      evaluationId: z.uuid(),
      sensorId: z.uuid().nullable(),
      setpointId: z.uuid().nullable(),
      place: z.enum(commentPlaces, "Choose what the remark speaks of."),
      text: z
        .string()
        .trim()
        .min(3, "Say what you see.")
        .max(2000, "At most 2000 characters.")
        .superRefine(seenWhole),
    })
    .refine(
      ({ sensorId, setpointId }) => setpointId === null || sensorId !== null,
      "A setpoint needs its sensor.",
    ),
  perform: async ({ actor, now, tx }, input) => {
    const locked = await lockRun(tx, input.runId);
    const review = locked ? await loadReviewRun(tx, input.runId) : null;
    const { evaluation } = review ?? {};
    const sensor = review?.sensors.find(({ id }) => id === input.sensorId);
    const result = evaluation?.results.find(
      ({ sensorId, setpointId }) => sensorId === input.sensorId && setpointId === input.setpointId,
    );
    const isHere = (input.sensorId === null || sensor) && (input.setpointId === null || result);
    if (!review || !evaluation || !isHere)
      throw new Refused({ code: "not-found", message: "What you remark on is not here." });
    const certificate = review.certificates.find(
      ({ sensorId, signedAt }) => sensorId === input.sensorId && signedAt >= review.run.createdAt,
    );
    demand(
      decideComment({
        runState: review.run.state,
        sensor: sensor?.tag ?? null,
        certificate: certificate?.number ?? null,
        isReplacing:
          input.sensorId === null ? review.replacing.length > 0 : isReplacing(review, input.sensorId),
      }),
    );
    if (evaluation.id !== input.evaluationId)
      throw new Refused({
        code: "changed-meanwhile",
        message:
          "The run was evaluated again since you opened it. Reload, look at the new number and say it there.",
      });
    const { id } = await tx.reviewComment.create({
      data: { ...input, writtenById: actorIdOf(actor), writtenAt: now },
      select: { id: true },
    });
    return {
      value: { id: String(id) },
      events: [
        eventOf(reviewEvents.commented, review.run.id, {
          run: review.run.number,
          evaluation: evaluation.sequence,
          sensor: sensor?.tag ?? null,
          setpoint: result?.point.setpoint ?? null,
          place: input.place,
          comment: String(id),
          text: input.text,
        }),
      ],
    };
  },
});
