"use server";
import { redirect } from "next/navigation";
import { beginSecondFactor } from "@/lib/operations/account/begin-second-factor";
import { confirmSecondFactor } from "@/lib/operations/account/confirm-second-factor";
import { endOtherSessions } from "@/lib/operations/account/end-other-sessions";
import { endSecondFactor } from "@/lib/operations/account/end-second-factor";
import { endOwnSession } from "@/lib/operations/account/end-session";
import { askOutsideLink, unlinkOutside } from "@/lib/operations/account/outside-link";
import { changeOwnPassword } from "@/lib/operations/staff/change-own-password";
import { accountAction } from "@/lib/web/account-action";
import { env } from "@/lib/web/env";
import { secret, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { dropSealed, setSealed } from "@/lib/web/sealed-cookie";

const change = accountAction(changeOwnPassword, {
  parse: (data) => ({
    oldPassword: secret(data, "oldPassword"),
    password: secret(data, "password"),
    passwordAgain: secret(data, "passwordAgain"),
  }),
  redirect: "/sign-in?said=password-changed",
});

const stays = { keepsSession: true } as const;

const endOne = accountAction(endOwnSession, {
  parse: (data) => ({ sessionId: text(data, "sessionId") }),
  redirect: "/account?said=session-ended",
  ...stays,
});

const endOthers = accountAction(endOtherSessions, {
  parse: () => ({}),
  redirect: "/account?said=others-ended",
  ...stays,
});

const begin = accountAction(beginSecondFactor, {
  parse: (data) => ({ password: secret(data, "password") }),
  redirect: "/account/codes",
  ...stays,
});

const confirm = accountAction(confirmSecondFactor, {
  parse: (data) => ({ code: text(data, "code"), publicUrl: env().publicOrigin }),
  redirect: "/account/recovery",
  ...stays,
  // Carried by the browser, sealed, for the one page that shows them: they are stored as hashes only.
  carryOn: (codes) => setSealed("recovery", { codes }, 600),
});

const endCodes = accountAction(endSecondFactor, {
  parse: (data) => ({
    password: secret(data, "password"),
    code: text(data, "code"),
    publicUrl: env().publicOrigin,
  }),
  redirect: "/account?said=codes-ended",
  ...stays,
});

const askLink = accountAction(askOutsideLink, {
  parse: (data) => ({ password: secret(data, "password") }),
  redirect: "/account/outside",
  ...stays,
  carryOn: ({ personId }) => setSealed("link", { personId }, 600),
});

const unlink = accountAction(unlinkOutside, {
  parse: (data) => ({ password: secret(data, "password") }),
  redirect: "/account?said=unlinked",
  ...stays,
});

export const askOutsideLinkAction = async (state: FormState, data: FormData) => askLink(state, data);
export const unlinkOutsideAction = async (state: FormState, data: FormData) => unlink(state, data);
export const changePasswordAction = async (state: FormState, data: FormData) => change(state, data);
export const endSessionAction = async (state: FormState, data: FormData) => endOne(state, data);
export const endOtherSessionsAction = async (state: FormState, data: FormData) => endOthers(state, data);
export const beginFactorAction = async (state: FormState, data: FormData) => begin(state, data);
export const confirmFactorAction = async (state: FormState, data: FormData) => confirm(state, data);
export const endFactorAction = async (state: FormState, data: FormData) => endCodes(state, data);

export const forgetRecoveryAction = async (): Promise<void> => {
  await dropSealed("recovery");
  redirect("/account?said=codes-kept");
};
