import { z } from "zod";
import { insertAnswer } from "@/lib/data/question/insert-answer";
import { loadLinkedQuestion } from "@/lib/data/question/load-question";
import { decideLinkedAnswer } from "@/lib/domain/question/decide-answer";
import { AnswerFields } from "@/lib/domain/question/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { optionalLine } from "@/lib/domain/typed-text";
import { defineOperation } from "../operation";

/** The customer answers by the link of the mail: whoever holds it, with the name they give. */
export const answerByLink = defineOperation({
  name: "question/answer-by-link",
  permission: "system",
  // The name is judged with the answer, so that both are told at once where both are missing.
  input: z.strictObject({
    token: z.string().min(1).max(200),
    saidByName: optionalLine(120),
    ...AnswerFields,
  }),
  perform: async ({ now, tx }, { token, ...said }) => {
    const question = await loadLinkedQuestion(tx, token, now);
    if (!question)
      throw new Refused({
        code: "not-found",
        message: "This link opens nothing any more. Please write to the laboratory; nothing was stored.",
      });
    const { saidByName } = demand(decideLinkedAnswer(question, said));
    const event = await insertAnswer(tx, question, {
      ...said,
      saidByName,
      cameBy: "link",
      saidById: null,
      saidAt: now,
    });
    return { value: { orderNumber: question.orderNumber }, events: [event] };
  },
});
