"use server";
import { acceptInvitation } from "@/lib/operations/account/accept-invitation";
import { secret, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { publicAction } from "@/lib/web/public-action";

const accept = publicAction(acceptInvitation, "invitation", {
  parse: (data) => ({
    token: text(data, "token"),
    name: text(data, "name"),
    password: secret(data, "password"),
    passwordAgain: secret(data, "passwordAgain"),
  }),
  redirect: "/sign-in?said=invited",
});

export const acceptInvitationAction = async (state: FormState, data: FormData) => accept(state, data);
