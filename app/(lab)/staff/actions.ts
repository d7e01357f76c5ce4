"use server";
import { addPerson } from "@/lib/operations/staff/add-person";
import { changePerson } from "@/lib/operations/staff/change-person";
import { setPersonActive } from "@/lib/operations/staff/set-active";
import { setPassword } from "@/lib/operations/staff/set-password";
import { formAction } from "@/lib/web/form-action";
import { list, number, secret, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const add = formAction(addPerson, {
  parse: (data) => ({
    name: text(data, "name"),
    email: text(data, "email"),
    roles: list(data, "roles"),
    customerId: text(data, "customerId") || null,
    password: secret(data, "password"),
  }),
  done: () => "The person can sign in now.",
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

export const addPersonAction = async (state: FormState, data: FormData) => add(state, data);
export const changePersonAction = async (state: FormState, data: FormData) => change(state, data);
export const setPersonActiveAction = async (state: FormState, data: FormData) => activate(state, data);
export const setPasswordAction = async (state: FormState, data: FormData) => replacePassword(state, data);
