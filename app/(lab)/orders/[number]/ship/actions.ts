"use server";
import { ship } from "@/lib/operations/shipment/ship";
import { env } from "@/lib/web/env";
import { formAction } from "@/lib/web/form-action";
import { list, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const fields = ["number", "handedOver", "carrier", "reference", "addressId", "toWhom", "reason"];

const send = formAction(ship, {
  parse: (data) => ({
    ...Object.fromEntries(fields.map((name) => [name, text(data, name)])),
    tags: list(data, "tags"),
    publicUrl: env().publicOrigin,
  }),
  done: ({ number, orderNumber }) => ({
    redirect: `/orders/${orderNumber}/quotation?sent=${number}#papers`,
  }),
});
export const shipAction = async (state: FormState, data: FormData) => send(state, data);
