import { z } from "zod";
import { insertAnswer } from "@/lib/data/question/insert-answer";
import { loadQuestion } from "@/lib/data/question/load-question";
import { AnswerFields } from "@/lib/domain/question/schema";
import { Refused } from "@/lib/domain/refusal";
import { demandOwn } from "@/lib/domain/staff/demand-own";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** The customer answers in the portal, under their own name. */
export const answerInPortal = defineOperation({
  name: "question/answer-in-portal",
  permission: "portal.order",
  scope: "laboratory",
  input: z.strictObject({ questionId: z.uuid(), ...AnswerFields }),
  perform: async ({ actor, now, tx }, { questionId, ...said }) => {
    const question = await loadQuestion(tx, questionId);
    demandOwn(actor, question?.customerId);
    if (!question)
      throw new Refused({ code: "not-found", message: "This is not here. Nothing was changed." });
    const event = await insertAnswer(tx, question, {
      ...said,
      cameBy: "portal",
      saidByName: actor.name,
      saidById: personIdOf(actor),
      saidAt: now,
    });
    return { value: { orderNumber: question.orderNumber }, events: [event] };
  },
});
