"use server";
import { changeCustomer } from "@/lib/operations/customer/change";
import { recordCustomer } from "@/lib/operations/customer/record";
import { formAction } from "@/lib/web/form-action";
import { number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const fields = (data: FormData) => ({
  name: text(data, "name"),
  addressLines: text(data, "addressLines"),
  contactName: text(data, "contactName"),
  email: text(data, "email"),
});

const record = formAction(recordCustomer, {
  parse: fields,
  done: ({ id }) => ({ redirect: `/customers/${id}` }),
});

const change = formAction(changeCustomer, {
  parse: (data) => ({ ...fields(data), id: text(data, "id"), version: number(data, "version") }),
  done: ({ id }) => ({ redirect: `/customers/${id}` }),
});

export const recordCustomerAction = async (state: FormState, data: FormData) => record(state, data);
export const changeCustomerAction = async (state: FormState, data: FormData) => change(state, data);
