"use server";
import { requestWorkInPortal } from "@/lib/operations/portal/request-work";
import { formAction } from "@/lib/web/form-action";
import { rows, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { emptyKind, kindFields } from "./kind-draft";

const kinds = (data: FormData) => {
  const all = rows(data, "kinds", kindFields);
  // One added and left empty is none; choices alone do not make one.
  const last = all.findLastIndex((kind) => kind.construction || kind.setpoints);
  return all.slice(0, Math.max(last + 1, 1)).map((kind) => ({ ...emptyKind, ...kind }));
};

const request = formAction(requestWorkInPortal, {
  parse: (data) => ({
    purchaseOrder: text(data, "purchaseOrder"),
    urgency: text(data, "urgency") || "standard",
    deliveryAddressId: text(data, "deliveryAddressId"),
    ruleSet: text(data, "ruleSet") || undefined,
    repeats: text(data, "repeats"),
    wishes: text(data, "wishes"),
    kinds: kinds(data),
  }),
  done: ({ number }) => ({ redirect: `/portal/orders/${number}` }),
});

export const requestAction = async (state: FormState, data: FormData) => request(state, data);
