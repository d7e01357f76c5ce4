import { z } from "zod";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { lockRun } from "@/lib/data/sql/lock-run";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideAnswer, decideComment } from "@/lib/domain/review/decide-comment";
import { reviewEvents } from "@/lib/domain/review/events";
import { maySettle } from "@/lib/domain/review/may-settle";
import { actorIdOf } from "@/lib/domain/staff/actor";
import { seenWhole } from "@/lib/domain/typed-text";
import { defineOperation } from "../operation";

/** What is said to a remark, and whether that settles it; by whoever measured or whoever signs. */
export const answerComment = defineOperation({
  name: "review/answer-comment",
  permission: "review.read",
  input: z.strictObject({
    commentId: z.string().regex(/^\d{1,18}$/),
    text: z
      .string()
      .trim()
      .min(3, "Say what you found.")
      .max(2000, "At most 2000 characters.")
      .superRefine(seenWhole),
    settles: z.boolean().default(false),
  }),
  perform: async ({ actor, now, tx }, input) => {
    const remark = await tx.reviewComment.findUnique({ where: { id: BigInt(input.commentId) } });
    if (!remark) throw new Refused({ code: "not-found", message: "This remark is not here." });
    await lockRun(tx, remark.runId);
    const review = await loadReviewRun(tx, remark.runId);
    if (!review) throw new Refused({ code: "not-found", message: "This remark is not here." });
    // Signed off, only what was asked of results that are to be replaced can be open; it is never left without an answer.
    if (review.run.state !== "signed-off")
      demand(decideComment({ runState: review.run.state, sensor: null, certificate: null }));
    const settled = await tx.reviewComment.findFirst({
      where: { answersId: remark.id, settles: true },
      select: { id: true },
    });
    demand(
      decideAnswer({
        ...{ isAnswer: remark.answersId !== null, isSettled: settled !== null, settles: input.settles },
        maySettle: maySettle(actor, remark.writtenById),
      }),
    );
    await tx.reviewComment.create({
      data: {
        runId: remark.runId,
        evaluationId: remark.evaluationId,
        sensorId: remark.sensorId,
        setpointId: remark.setpointId,
        place: remark.place,
        answersId: remark.id,
        settles: input.settles,
        text: input.text,
        writtenById: actorIdOf(actor),
        writtenAt: now,
      },
    });
    return {
      value: { settles: input.settles },
      events: [
        eventOf(reviewEvents.answered, review.run.id, {
          run: review.run.number,
          comment: input.commentId,
          settles: input.settles,
          text: input.text,
        }),
      ],
    };
  },
});
