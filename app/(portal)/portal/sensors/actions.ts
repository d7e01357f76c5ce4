"use server";
import { setInterval as setRecallInterval } from "@/lib/operations/portal/set-interval";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const set = formAction(setRecallInterval, {
  parse: (data) => ({
    serial: text(data, "serial"),
    months: text(data, "months"),
    noticeDays: text(data, "noticeDays"),
  }),
  done: ({ months }) =>
    months === null ? "Noted: no reminder." : `Noted: every ${months} ${months === 1 ? "month" : "months"}.`,
});

export const setIntervalAction = async (state: FormState, data: FormData) => set(state, data);
