"use server";
import { agreeInPortal } from "@/lib/operations/agreement/agree-in-portal";
import { answerInPortal } from "@/lib/operations/question/answer-in-portal";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const answer = formAction(answerInPortal, {
  parse: (data) => ({
    questionId: text(data, "questionId"),
    choice: text(data, "choice"),
    text: text(data, "text"),
  }),
  done: () => "Thank you. Your answer is with us, and we go on with it.",
});

const agree = formAction(agreeInPortal, {
  parse: (data) => ({
    quotation: text(data, "quotation"),
    answer: text(data, "answer"),
    contentHash: text(data, "contentHash"),
    purchaseOrder: text(data, "purchaseOrder"),
    remark: text(data, "remark"),
  }),
  done: ({ orderNumber, quotation }) => ({
    redirect: `/portal/orders/${orderNumber}?answered=${quotation}`,
  }),
});

export const answerQuestionAction = async (state: FormState, data: FormData) => answer(state, data);
export const agreeAction = async (state: FormState, data: FormData) => agree(state, data);
