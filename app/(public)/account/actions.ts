"use server";
import { changeOwnPassword } from "@/lib/operations/staff/change-own-password";
import { accountAction } from "@/lib/web/account-action";
import { secret } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const change = accountAction(changeOwnPassword, {
  parse: (data) => ({
    oldPassword: secret(data, "oldPassword"),
    password: secret(data, "password"),
    passwordAgain: secret(data, "passwordAgain"),
  }),
  redirect: "/sign-in?said=password-changed",
});

export const changePasswordAction = async (state: FormState, data: FormData) => change(state, data);
