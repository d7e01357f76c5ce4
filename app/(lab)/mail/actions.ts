"use server";
import { sendAgain } from "@/lib/operations/mail/send-again";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const again = formAction(sendAgain, {
  parse: (data) => ({ mailMessageId: text(data, "mailMessageId") }),
  done: () => "It is next in the queue. Reload to see how it went.",
});

export const sendAgainAction = async (state: FormState, data: FormData) => again(state, data);
