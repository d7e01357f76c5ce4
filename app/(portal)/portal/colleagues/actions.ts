"use server";
import { inviteColleague } from "@/lib/operations/account/invite-colleague";
import { withdrawColleagueInvitation } from "@/lib/operations/account/withdraw-invitation";
import { changeColleagueRoles } from "@/lib/operations/portal/change-colleague-roles";
import { setColleagueActive } from "@/lib/operations/portal/set-colleague-active";
import { env } from "@/lib/web/env";
import { formAction } from "@/lib/web/form-action";
import { list, number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const row = (data: FormData) => ({ id: text(data, "id"), version: number(data, "version") });

const invite = formAction(inviteColleague, {
  parse: (data) => ({
    name: text(data, "name"),
    email: text(data, "email"),
    roles: list(data, "roles"),
    publicUrl: env().publicOrigin,
  }),
  done: () => "Invited: a letter with a link is on its way.",
});
const withdraw = formAction(withdrawColleagueInvitation, {
  parse: (data) => ({ id: text(data, "id") }),
  done: () => "Withdrawn: the link opens nothing any more.",
});
const changeRoles = formAction(changeColleagueRoles, {
  parse: (data) => ({ ...row(data), roles: list(data, "roles") }),
});
const setActive = formAction(setColleagueActive, {
  parse: (data) => ({ ...row(data), active: text(data, "active") === "yes" }),
});

export const changeColleagueRolesAction = async (state: FormState, data: FormData) =>
  changeRoles(state, data);
export const setColleagueActiveAction = async (state: FormState, data: FormData) => setActive(state, data);
export const inviteColleagueAction = async (state: FormState, data: FormData) => invite(state, data);
export const withdrawInvitationAction = async (state: FormState, data: FormData) => withdraw(state, data);
