"use server";
import { acknowledgeOrder } from "@/lib/operations/agreement/acknowledge";
import { recordAgreement } from "@/lib/operations/agreement/record";
import { makeQuotation } from "@/lib/operations/quotation/make";
import { env } from "@/lib/web/env";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const make = formAction(makeQuotation, {
  parse: (data) => ({
    number: text(data, "number"),
    validUntil: text(data, "validUntil"),
    delivery: text(data, "delivery"),
    publicUrl: env().publicOrigin,
  }),
  done: ({ number }) => `Offer ${number} is made, and its mail is in the queue.`,
});
export const makeQuotationAction = async (state: FormState, data: FormData) => make(state, data);

const record = formAction(recordAgreement, {
  parse: (data) => ({
    quotation: text(data, "quotation"),
    name: text(data, "name"),
    answer: text(data, "answer"),
    contentHash: text(data, "contentHash"),
    purchaseOrder: text(data, "purchaseOrder"),
    remark: text(data, "remark"),
  }),
  done: ({ quotation }) => `The answer to ${quotation} is kept.`,
});
export const recordAgreementAction = async (state: FormState, data: FormData) => record(state, data);

const acknowledge = formAction(acknowledgeOrder, {
  parse: (data) => ({ number: text(data, "number"), publicUrl: env().publicOrigin }),
  done: ({ number }) => `Acknowledgment ${number} is made, and its mail is in the queue.`,
});
export const acknowledgeOrderAction = async (state: FormState, data: FormData) => acknowledge(state, data);
