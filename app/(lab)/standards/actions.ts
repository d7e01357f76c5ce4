"use server";
import { servicePolicyKeys } from "@/lib/domain/equipment/service-policy";
import { changeEquipment } from "@/lib/operations/equipment/change";
import { changeServicePolicy } from "@/lib/operations/equipment/change-service-policy";
import { recordEquipment } from "@/lib/operations/equipment/record";
import { recordEntry } from "@/lib/operations/equipment/record-entry";
import { setEquipmentState } from "@/lib/operations/equipment/set-state";
import { formAction } from "@/lib/web/form-action";
import { number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { uploadedFile } from "./parse-calibration";
import { parseEntry } from "./parse-entry";
import { parseParticulars } from "./parse-particulars";
import { parseRecord } from "./parse-record";

const described = (data: FormData) => ({
  maker: text(data, "maker"),
  model: text(data, "model"),
  serial: text(data, "serial"),
  ...parseRecord(data),
  particulars: parseParticulars(data),
});

const record = formAction(recordEquipment, {
  parse: (data) => ({ tag: text(data, "tag"), ...described(data) }),
  done: ({ id }) => ({ redirect: `/standards/${id}` }),
});

const change = formAction(changeEquipment, {
  parse: (data) => ({ id: text(data, "id"), version: number(data, "version"), ...described(data) }),
  done: ({ id }) => ({ redirect: `/standards/${id}` }),
});

const setState = formAction(setEquipmentState, {
  parse: (data) => ({
    id: text(data, "id"),
    version: number(data, "version"),
    state: text(data, "state"),
    reason: text(data, "reason"),
  }),
});

const policy = formAction(changeServicePolicy, {
  parse: (data) => ({
    version: number(data, "version"),
    policy: Object.fromEntries(servicePolicyKeys.map((key) => [key, text(data, `policy.${key}`)])),
    reason: text(data, "reason"),
  }),
  done: () => ({ redirect: "/standards" }),
});

export const changeServicePolicyAction = async (state: FormState, data: FormData) => policy(state, data);
export const recordEquipmentAction = async (state: FormState, data: FormData) => record(state, data);
export const changeEquipmentAction = async (state: FormState, data: FormData) => change(state, data);
export const setEquipmentStateAction = async (state: FormState, data: FormData) => setState(state, data);

/** A file is read before the form is: reading takes its time, parsing does not. */
export const recordEntryAction = async (state: FormState, data: FormData) => {
  const file = await uploadedFile(data, "document");
  const write = formAction(recordEntry, {
    parse: (form) => parseEntry(form, file),
    done: ({ id }) => ({ redirect: `/standards/${id}` }),
  });
  return write(state, data);
};
