"use server";
import { invitePerson } from "@/lib/operations/account/invite";
import { resetSecondFactor } from "@/lib/operations/account/reset-second-factor";
import { unlockPerson } from "@/lib/operations/account/unlock";
import { withdrawAnyInvitation } from "@/lib/operations/account/withdraw-invitation";
import { changePerson } from "@/lib/operations/staff/change-person";
import { setPersonActive } from "@/lib/operations/staff/set-active";
import { setPassword } from "@/lib/operations/staff/set-password";
import { env } from "@/lib/web/env";
import { formAction } from "@/lib/web/form-action";
import { list, number, secret, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const invite = formAction(invitePerson, {
  parse: (data) => ({
    name: text(data, "name"),
    email: text(data, "email"),
    roles: list(data, "roles"),
    customerId: text(data, "customerId") || null,
    publicUrl: env().publicOrigin,
  }),
  done: () => "The invitation is on its way. It works for three days.",
});

const withdraw = formAction(withdrawAnyInvitation, {
  parse: (data) => ({ id: text(data, "id") }),
  done: () => "The invitation is withdrawn.",
});

const unlock = formAction(unlockPerson, {
  parse: (data) => ({ personId: text(data, "id") }),
  done: () => "The account is open again.",
});

const resetFactor = formAction(resetSecondFactor, {
  parse: (data) => ({
    personId: text(data, "id"),
    reason: text(data, "reason"),
    publicUrl: env().publicOrigin,
  }),
  done: () => "The codes are taken away, and every session of this person is ended.",
});

const change = formAction(changePerson, {
  parse: (data) => ({
    id: text(data, "id"),
    version: number(data, "version"),
    name: text(data, "name"),
    email: text(data, "email"),
    roles: list(data, "roles"),
  }),
});

const activate = formAction(setPersonActive, {
  parse: (data) => ({
    id: text(data, "id"),
    version: number(data, "version"),
    active: text(data, "active") === "yes",
  }),
  done: () => "Done. Every session of this person is ended.",
});

const replacePassword = formAction(setPassword, {
  parse: (data) => ({ id: text(data, "id"), password: secret(data, "password") }),
  done: () => "The password is set, and every session of this person is ended.",
});

export const invitePersonAction = async (state: FormState, data: FormData) => invite(state, data);
export const withdrawInvitationAction = async (state: FormState, data: FormData) => withdraw(state, data);
export const unlockPersonAction = async (state: FormState, data: FormData) => unlock(state, data);
export const resetFactorAction = async (state: FormState, data: FormData) => resetFactor(state, data);
export const changePersonAction = async (state: FormState, data: FormData) => change(state, data);
export const setPersonActiveAction = async (state: FormState, data: FormData) => activate(state, data);
export const setPasswordAction = async (state: FormState, data: FormData) => replacePassword(state, data);
