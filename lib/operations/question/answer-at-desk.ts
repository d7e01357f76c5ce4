import { z } from "zod";
import { insertAnswer } from "@/lib/data/question/insert-answer";
import { loadQuestion } from "@/lib/data/question/load-question";
import { AnswerFields, SaidBy } from "@/lib/domain/question/schema";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** What the customer said on the telephone or at the desk, in the name of whoever said it. */
export const answerAtDesk = defineOperation({
  name: "question/answer-at-desk",
  permission: "hold.place",
  input: z.strictObject({ questionId: z.uuid(), saidByName: SaidBy, ...AnswerFields }),
  perform: async ({ actor, now, tx }, { questionId, ...said }) => {
    const question = await loadQuestion(tx, questionId);
    if (!question) throw new Refused({ code: "not-found", message: "This question is not here." });
    const saidById = personIdOf(actor);
    const event = await insertAnswer(tx, question, { ...said, cameBy: "desk", saidById, saidAt: now });
    return { value: { orderNumber: question.orderNumber }, events: [event] };
  },
});
