import { z } from "zod";
import { insertAnswer } from "@/lib/data/question/insert-answer";
import { loadLinkedQuestion } from "@/lib/data/question/load-question";
import { AnswerFields, SaidBy } from "@/lib/domain/question/schema";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** The customer answers by the link of the mail: whoever holds it, with the name they give. */
export const answerByLink = defineOperation({
  name: "question/answer-by-link",
  permission: "system",
  input: z.strictObject({ token: z.string().min(1).max(200), saidByName: SaidBy, ...AnswerFields }),
  perform: async ({ now, tx }, { token, ...said }) => {
    const question = await loadLinkedQuestion(tx, token, now);
    if (!question)
      throw new Refused({
        code: "not-found",
        message: "This link opens nothing any more. Please write to the laboratory; nothing was stored.",
      });
    const event = await insertAnswer(tx, question, { ...said, cameBy: "link", saidById: null, saidAt: now });
    return { value: { orderNumber: question.orderNumber }, events: [event] };
  },
});
