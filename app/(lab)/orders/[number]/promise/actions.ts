"use server";
import { givePromise } from "@/lib/operations/promise/give";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const fields = ["number", "arrivesOn", "promisedOn", "reason", "shown"];

const give = formAction(givePromise, {
  parse: (data) => Object.fromEntries(fields.map((name) => [name, text(data, name)])),
  done: ({ orderNumber }) => ({ redirect: `/orders/${orderNumber}` }),
});
export const givePromiseAction = async (state: FormState, data: FormData) => give(state, data);
