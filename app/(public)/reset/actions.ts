"use server";
import { askReset } from "@/lib/operations/account/ask-reset";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { publicWork } from "@/lib/web/public-action";

const ask = publicWork((data, client) => askReset({ email: text(data, "email"), client }, () => new Date()), {
  name: "account/ask-reset",
  redirect: "/reset?said=asked",
});

export const askResetAction = async (state: FormState, data: FormData) => ask(state, data);
