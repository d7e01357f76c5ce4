"use server";
import { changeOrder } from "@/lib/operations/order/change";
import { acknowledgeChange } from "@/lib/operations/order/change-acknowledge";
import { raiseDifference } from "@/lib/operations/order/difference-raise";
import { settleDifference } from "@/lib/operations/order/difference-settle";
import { noteOrder } from "@/lib/operations/order/note";
import { takeOverOrder } from "@/lib/operations/order/take-over";
import { formAction } from "@/lib/web/form-action";
import { flag, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { oneLineMore, orderTerms, reviewAnswers } from "../../order-data";

const raise = formAction(raiseDifference, {
  parse: (data) => ({ number: text(data, "number"), text: text(data, "text") }),
  done: () => "The difference is open until it is settled with the customer.",
});
export const raiseDifferenceAction = async (state: FormState, data: FormData) => raise(state, data);

const settle = formAction(settleDifference, {
  parse: (data) => ({
    number: text(data, "number"),
    differenceId: text(data, "differenceId"),
    text: text(data, "text"),
    agreedWith: text(data, "agreedWith"),
  }),
  done: () => "The difference is settled.",
});
export const settleDifferenceAction = async (state: FormState, data: FormData) => settle(state, data);

const note = formAction(noteOrder, {
  parse: (data) => ({
    number: text(data, "number"),
    kind: text(data, "kind"),
    text: text(data, "text"),
    isForCustomer: flag(data, "isForCustomer"),
  }),
  done: () => "The note is kept.",
});
export const noteOrderAction = async (state: FormState, data: FormData) => note(state, data);

const versioned = (data: FormData) => ({ number: text(data, "number"), version: text(data, "version") });
const toOrder = (order: { readonly number: string }) => ({ redirect: `/orders/${order.number}` });

const change = formAction(changeOrder, {
  parse: (data) => ({
    ...orderTerms(data),
    ...versioned(data),
    ...reviewAnswers(data),
    reason: text(data, "reason"),
    agreedWith: text(data, "agreedWith"),
    toldCustomer: flag(data, "toldCustomer"),
  }),
  done: toOrder,
});
export const changeOrderAction = async (state: FormState, data: FormData) =>
  data.has("addLine") ? oneLineMore(data) : change(state, data);

const takeOver = formAction(takeOverOrder, {
  parse: (data) => ({ ...orderTerms(data), ...versioned(data) }),
  done: toOrder,
});
export const takeOverOrderAction = async (state: FormState, data: FormData) =>
  data.has("addLine") ? oneLineMore(data) : takeOver(state, data);

const acknowledge = formAction(acknowledgeChange, {
  parse: (data) => ({ run: text(data, "run"), changeId: text(data, "changeId") }),
  done: ({ run }) => `Acknowledged: run ${run} goes on.`,
});
export const acknowledgeChangeAction = async (state: FormState, data: FormData) => acknowledge(state, data);
