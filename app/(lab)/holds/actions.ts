"use server";
import { placeHoldOn } from "@/lib/operations/hold/place";
import { releaseHold } from "@/lib/operations/hold/release";
import { answerAtDesk } from "@/lib/operations/question/answer-at-desk";
import { askAboutHold } from "@/lib/operations/question/ask";
import { env } from "@/lib/web/env";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { atShownFields } from "./shown-fields";

/** One answer a line, as they are typed. */
const choicesOf = (data: FormData): string[] =>
  text(data, "choices")
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "");

const place = formAction(placeHoldOn, {
  parse: (data) => ({
    orderNumber: text(data, "orderNumber"),
    tag: text(data, "tag"),
    kind: text(data, "kind"),
    reason: text(data, "reason"),
    ...(text(data, "question.text") === ""
      ? {}
      : { question: { text: text(data, "question.text"), choices: choicesOf(data) } }),
    publicUrl: env().publicOrigin,
  }),
  done: ({ questionId }) =>
    questionId ? "On hold; the question is on its way to the customer." : "On hold.",
});

const ask = formAction(askAboutHold, {
  parse: (data) => ({
    holdId: text(data, "holdId"),
    text: text(data, "text"),
    choices: choicesOf(data),
    publicUrl: env().publicOrigin,
  }),
  done: () => "Asked; the question is on its way to the customer.",
});

const answer = formAction(answerAtDesk, {
  parse: (data) => ({
    questionId: text(data, "questionId"),
    choice: text(data, "choice"),
    text: text(data, "text"),
    saidByName: text(data, "saidByName"),
  }),
  done: () => "The answer is recorded.",
});

const release = formAction(releaseHold, {
  parse: (data) => ({
    holdId: text(data, "holdId"),
    outcome: text(data, "outcome"),
    reason: text(data, "reason"),
    disclaimer: text(data, "disclaimer"),
    ...(text(data, "awaitsAnother") === "" ? {} : { awaitsAnother: text(data, "awaitsAnother") }),
  }),
  done: ({ tag }) => (tag === "" ? "The hold has ended." : `The hold of ${tag} has ended.`),
});

export const placeHoldAction = async (state: FormState, data: FormData) =>
  atShownFields(await place(state, data));
export const askAboutHoldAction = async (state: FormState, data: FormData) =>
  atShownFields(await ask(state, data));
export const answerAtDeskAction = async (state: FormState, data: FormData) => answer(state, data);
export const releaseHoldAction = async (state: FormState, data: FormData) => release(state, data);
