"use server";
import { acceptOrder } from "@/lib/operations/order/accept";
import { amendOrder } from "@/lib/operations/order/amend";
import { cancelOrder } from "@/lib/operations/order/cancel";
import { recordOrder } from "@/lib/operations/order/record";
import { formAction } from "@/lib/web/form-action";
import { flag, number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { oneLineMore, orderTerms, reviewAnswers } from "./order-data";

const toOrder = (order: { readonly number: string }) => ({ redirect: `/orders/${order.number}` });

const record = formAction(recordOrder, {
  parse: (data) => ({ ...orderTerms(data), customerId: text(data, "customerId") }),
  done: toOrder,
});

const amend = formAction(amendOrder, {
  parse: (data) => ({ ...orderTerms(data), number: text(data, "number"), version: text(data, "version") }),
  done: toOrder,
});

const accept = formAction(acceptOrder, {
  parse: (data) => ({
    number: text(data, "number"),
    version: number(data, "version"),
    ...reviewAnswers(data),
    toldCustomer: flag(data, "toldCustomer"),
  }),
  done: ({ number, openOffer }) =>
    `Order ${number} is accepted. Its sensors can be taken in.${
      openOffer
        ? ` Offer ${openOffer.number} is still open: the customer may answer it until ${openOffer.validUntil}.`
        : ""
    }`,
});

const cancel = formAction(cancelOrder, {
  parse: (data) => ({ number: text(data, "number"), reason: text(data, "reason") }),
  done: ({ number }) => `Order ${number} is cancelled. Its record stays.`,
});

export const recordOrderAction = async (state: FormState, data: FormData) =>
  data.has("addLine") ? oneLineMore(data) : record(state, data);
export const amendOrderAction = async (state: FormState, data: FormData) =>
  data.has("addLine") ? oneLineMore(data) : amend(state, data);
export const acceptOrderAction = async (state: FormState, data: FormData) => accept(state, data);
export const cancelOrderAction = async (state: FormState, data: FormData) => cancel(state, data);
