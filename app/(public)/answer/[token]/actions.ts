"use server";
import { answerByLink } from "@/lib/operations/question/answer-by-link";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { publicAction } from "@/lib/web/public-action";

const answer = publicAction(answerByLink, "link", {
  parse: (data) => ({
    token: text(data, "token"),
    choice: text(data, "choice"),
    text: text(data, "text"),
    saidByName: text(data, "saidByName"),
  }),
  redirect: "/answer/thanks",
});

export const answerByLinkAction = async (state: FormState, data: FormData): Promise<FormState> =>
  answer(state, data);
