"use server";
import { changeAccountPolicy } from "@/lib/operations/account/change-policy";
import { changeSigningPolicy } from "@/lib/operations/signing/change-policy";
import { formAction } from "@/lib/web/form-action";
import { list, number } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const change = formAction(changeAccountPolicy, {
  parse: (data) => ({
    version: number(data, "version"),
    policy: {
      lockAfter: number(data, "policy.lockAfter"),
      lockMinutes: number(data, "policy.lockMinutes"),
      idleMinutes: number(data, "policy.idleMinutes"),
      secondFactorRoles: list(data, "policy.secondFactorRoles"),
    },
  }),
  done: () => "Saved. It holds for the sessions that are open, too.",
});

const changeSigning = formAction(changeSigningPolicy, {
  parse: (data) => ({
    version: number(data, "version"),
    policy: {
      windowMinutes: number(data, "policy.windowMinutes"),
      longestHours: number(data, "policy.longestHours"),
    },
  }),
  done: () => "Saved. It holds for the sessions that run, too.",
});

export const changeAccountPolicyAction = async (state: FormState, data: FormData) => change(state, data);
export const changeSigningPolicyAction = async (state: FormState, data: FormData) =>
  changeSigning(state, data);
