"use server";
import { changeColleagueRoles } from "@/lib/operations/portal/change-colleague-roles";
import { setColleagueActive } from "@/lib/operations/portal/set-colleague-active";
import { formAction } from "@/lib/web/form-action";
import { list, number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const row = (data: FormData) => ({ id: text(data, "id"), version: number(data, "version") });

const changeRoles = formAction(changeColleagueRoles, {
  parse: (data) => ({ ...row(data), roles: list(data, "roles") }),
});
const setActive = formAction(setColleagueActive, {
  parse: (data) => ({ ...row(data), active: text(data, "active") === "yes" }),
});

export const changeColleagueRolesAction = async (state: FormState, data: FormData) =>
  changeRoles(state, data);
export const setColleagueActiveAction = async (state: FormState, data: FormData) => setActive(state, data);
