"use server";
import { setPasswordByLink } from "@/lib/operations/account/set-password-by-link";
import { env } from "@/lib/web/env";
import { secret, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { publicAction } from "@/lib/web/public-action";

const set = publicAction(setPasswordByLink, "reset", {
  parse: (data) => ({
    token: text(data, "token"),
    password: secret(data, "password"),
    passwordAgain: secret(data, "passwordAgain"),
    publicUrl: env().publicOrigin,
  }),
  redirect: "/sign-in?said=reset",
});

export const setPasswordByLinkAction = async (state: FormState, data: FormData) => set(state, data);
