"use server";
import { addAddress } from "@/lib/operations/portal/add-address";
import { changeAddress } from "@/lib/operations/portal/change-address";
import { setAddressActive } from "@/lib/operations/portal/set-address-active";
import { formAction } from "@/lib/web/form-action";
import { number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const fields = (data: FormData) => ({
  kind: text(data, "kind"),
  title: text(data, "title"),
  addressLines: text(data, "addressLines"),
  contactName: text(data, "contactName"),
});
const row = (data: FormData) => ({ id: text(data, "id"), version: number(data, "version") });

const add = formAction(addAddress, { parse: fields, done: () => "Added." });
const change = formAction(changeAddress, { parse: (data) => ({ ...row(data), ...fields(data) }) });
const setActive = formAction(setAddressActive, {
  parse: (data) => ({ ...row(data), active: text(data, "active") === "yes" }),
});

export const addAddressAction = async (state: FormState, data: FormData) => add(state, data);
export const changeAddressAction = async (state: FormState, data: FormData) => change(state, data);
export const setAddressActiveAction = async (state: FormState, data: FormData) => setActive(state, data);
