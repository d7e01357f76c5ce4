"use server";
import { BuildDraft } from "@/lib/domain/sensor/build-draft";
import { acceptOrder } from "@/lib/operations/order/accept";
import { amendOrder } from "@/lib/operations/order/amend";
import { cancelOrder } from "@/lib/operations/order/cancel";
import { recordOrder } from "@/lib/operations/order/record";
import { receiveSensors } from "@/lib/operations/sensor/receive";
import { formAction, refusedState } from "@/lib/web/form-action";
import { flag, number, rows, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { emptyLine, lineFields } from "./line-draft";

const lines = (data: FormData) => {
  const all = rows(data, "lines", lineFields);
  // A line added and left empty is no line; choices alone do not make one.
  const last = all.findLastIndex((line) => line.construction || line.setpoints);
  return all.slice(0, Math.max(last + 1, 1));
};

const terms = (data: FormData) => ({
  purchaseOrder: text(data, "purchaseOrder"),
  decisionRule: text(data, "decisionRule"),
  guardBandRatio: text(data, "guardBandRatio"),
  falseAcceptancePercent: text(data, "falseAcceptancePercent"),
  decisionRuleAgreedBy: text(data, "decisionRuleAgreedBy"),
  decisionRuleAgreedOn: text(data, "decisionRuleAgreedOn"),
  uncertaintyDigits: text(data, "uncertaintyDigits"),
  note: text(data, "note"),
  urgency: text(data, "urgency") || undefined,
  ruleSet: text(data, "ruleSet") || undefined,
  lines: lines(data),
});

const toOrder = (order: { readonly number: string }) => ({ redirect: `/orders/${order.number}` });

const record = formAction(recordOrder, {
  parse: (data) => ({ ...terms(data), customerId: text(data, "customerId") }),
  done: toOrder,
});

const amend = formAction(amendOrder, {
  parse: (data) => ({ ...terms(data), number: text(data, "number"), version: text(data, "version") }),
  done: toOrder,
});

const accept = formAction(acceptOrder, {
  parse: (data) => ({
    number: text(data, "number"),
    version: number(data, "version"),
    requirementsUnderstood: flag(data, "requirementsUnderstood"),
    capabilityAndResources: flag(data, "capabilityAndResources"),
    externalProviders: text(data, "externalProviders"),
    methodSuitable: flag(data, "methodSuitable"),
    toldCustomer: flag(data, "toldCustomer"),
  }),
  done: ({ number }) => `Order ${number} is accepted. Its sensors can be taken in.`,
});

const cancel = formAction(cancelOrder, {
  parse: (data) => ({ number: text(data, "number"), reason: text(data, "reason") }),
  done: ({ number }) => `Order ${number} is cancelled. Its record stays.`,
});

const buildFields = Object.keys(BuildDraft.shape);
const checks = [
  "condition",
  "conditionNote",
  "loopResistanceOhm",
  "insulationMegaohm",
  "polarity",
  "typeCheck",
];

const receive = formAction(receiveSensors, {
  parse: (data) => ({
    orderNumber: text(data, "orderNumber"),
    position: text(data, "position"),
    receivedOn: text(data, "receivedOn"),
    serials: String(data.get("serials") ?? ""),
    ...Object.fromEntries(checks.map((name) => [name, text(data, name)])),
    ...Object.fromEntries(buildFields.map((name) => [name, text(data, name)])),
    each: rows(data, "each", checks),
  }),
  done: ({ orderNumber }) => ({ redirect: `/orders/${orderNumber}#sensors` }),
});

/** Only without JavaScript: the same form again with one line more. */
const oneLineMore = (data: FormData): FormState => {
  const count = rows(data, "lines", lineFields).length;
  for (const field of lineFields) data.set(`lines.${count}.${field}`, emptyLine[field]);
  return refusedState(data, "Nothing is stored yet: one line was added.");
};

export const recordOrderAction = async (state: FormState, data: FormData) =>
  data.has("addLine") ? oneLineMore(data) : record(state, data);
export const amendOrderAction = async (state: FormState, data: FormData) =>
  data.has("addLine") ? oneLineMore(data) : amend(state, data);
export const acceptOrderAction = async (state: FormState, data: FormData) => accept(state, data);
export const cancelOrderAction = async (state: FormState, data: FormData) => cancel(state, data);
export const receiveSensorsAction = async (state: FormState, data: FormData) =>
  data.has("listSensors")
    ? refusedState(data, "Nothing is stored yet: the sensors are listed below.")
    : receive(state, data);
