import { z } from "zod";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { lockRun } from "@/lib/data/sql/lock-run";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand, Refused } from "@/lib/domain/refusal";
import { reviewEvents } from "@/lib/domain/review/events";
import { decideSecondLook } from "@/lib/domain/review/may-decide";
import { actorIdOf } from "@/lib/domain/staff/actor";
import { seenWhole } from "@/lib/domain/typed-text";
import { defineOperation } from "../operation";

/** The later look that a sign-off by the performer owes, by somebody who neither measured nor signed. */
export const secondLook = defineOperation({
  name: "review/second-look",
  permission: "review.second-look",
  input: z.strictObject({
    certificateId: z.uuid(),
    finding: z
      .string()
      .trim()
      .min(10, "Say in a sentence what you looked at and what you found.")
      .max(2000, "At most 2000 characters.")
      .superRefine(seenWhole),
  }),
  perform: async ({ actor, now, tx }, input) => {
    const certificate = await tx.certificate.findUnique({ where: { id: input.certificateId } });
    if (!certificate) throw new Refused({ code: "not-found", message: "This certificate is not here." });
    await lockRun(tx, certificate.runId);
    const review = await loadReviewRun(tx, certificate.runId);
    const decisions = review?.decisions.filter(({ sensorId }) => sensorId === certificate.sensorId) ?? [];
    demand(
      decideSecondLook({
        personId: actorIdOf(actor),
        signedById: certificate.signedById,
        performerIds: review?.performerIds ?? [],
        isOwed: decisions.some(
          ({ decision, exceptionReason }) => decision === "signed-off" && exceptionReason !== null,
        ),
        isDone: decisions.some(({ decision }) => decision === "second-look"),
      }),
    );
    await tx.reviewDecision.create({
      data: {
        runId: certificate.runId,
        evaluationId: certificate.evaluationId,
        sensorId: certificate.sensorId,
        decision: "second-look",
        reason: input.finding,
        decidedById: actorIdOf(actor),
        decidedAt: now,
      },
    });
    return {
      value: { number: certificate.number },
      events: [
        eventOf(reviewEvents.secondLookRecorded, certificate.id, {
          number: certificate.number,
          finding: input.finding,
        }),
      ],
    };
  },
});
