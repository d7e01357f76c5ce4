"use server";
import { agreeRoll } from "@/lib/operations/order/agree-roll";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const agree = formAction(agreeRoll, {
  parse: (data) => ({
    number: text(data, "number"),
    lot: text(data, "lot"),
    roll: text(data, "roll"),
    agreedWith: text(data, "agreedWith"),
    text: text(data, "text"),
  }),
  done: ({ name }) => `Recorded: one end of ${name} is reported alone.`,
});

export const agreeRollAction = async (state: FormState, data: FormData) => agree(state, data);
