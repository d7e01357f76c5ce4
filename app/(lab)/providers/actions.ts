"use server";
import { approveProvider } from "@/lib/operations/provider/approve";
import { recordProvider } from "@/lib/operations/provider/record";
import { suspendProvider } from "@/lib/operations/provider/suspend";
import { formAction } from "@/lib/web/form-action";
import { list, number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const record = formAction(recordProvider, {
  parse: (data) => ({
    name: text(data, "name"),
    route: text(data, "route"),
    accreditation: text(data, "accreditation"),
    accreditationBody: text(data, "accreditationBody"),
    note: text(data, "note"),
  }),
  done: ({ id }) => ({ redirect: `/providers/${id}` }),
});

const approve = formAction(approveProvider, {
  parse: (data) => ({
    id: text(data, "id"),
    version: number(data, "version"),
    approvedFrom: text(data, "approvedFrom"),
    approvedUntil: text(data, "approvedUntil"),
    scope: list(data, "scope").map((kind) => ({ kind, range: text(data, `range.${kind}`) })),
    note: text(data, "note"),
  }),
  done: () => "Approved.",
});

const suspend = formAction(suspendProvider, {
  parse: (data) => ({
    id: text(data, "id"),
    version: number(data, "version"),
    reason: text(data, "reason"),
  }),
  done: () => "Suspended: nothing it calibrated is chosen from now on.",
});

export const recordProviderAction = async (state: FormState, data: FormData) => record(state, data);
export const approveProviderAction = async (state: FormState, data: FormData) => approve(state, data);
export const suspendProviderAction = async (state: FormState, data: FormData) => suspend(state, data);
