"use server";
import { takeOpinionBack } from "@/lib/operations/opinion/take-back";
import { writeOpinion } from "@/lib/operations/opinion/write";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const place = (data: FormData) => ({
  runId: text(data, "runId"),
  evaluationId: text(data, "evaluationId"),
  sensorId: text(data, "sensorId"),
});

const write = formAction(writeOpinion, {
  parse: (data) => ({ ...place(data), text: text(data, "text"), basis: text(data, "basis") }),
  done: ({ tag }) => `The opinion on ${tag} stands on the draft of its certificate.`,
});

const takeBack = formAction(takeOpinionBack, {
  parse: (data) => ({ ...place(data), reason: text(data, "reason") }),
  done: ({ tag }) => `The opinion on ${tag} is taken back; it stays on record and is not printed.`,
});

export const writeOpinionAction = async (state: FormState, data: FormData) => write(state, data);
export const takeOpinionBackAction = async (state: FormState, data: FormData) => takeBack(state, data);
