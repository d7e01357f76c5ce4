"use server";
import { signOut } from "@/lib/operations/staff/sign-out";
import { accountAction } from "@/lib/web/account-action";
import type { FormState } from "@/lib/web/form-state";

const leave = accountAction(signOut, { parse: () => ({}), redirect: "/sign-in?said=signed-out" });

export const signOutAction = async (state: FormState, data: FormData): Promise<FormState> =>
  leave(state, data);
