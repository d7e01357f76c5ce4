"use server";
import { changeEquipment } from "@/lib/operations/equipment/change";
import { recordEquipment } from "@/lib/operations/equipment/record";
import { setEquipmentState } from "@/lib/operations/equipment/set-state";
import { formAction } from "@/lib/web/form-action";
import { number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { parseParticulars } from "./parse-particulars";

const described = (data: FormData) => ({
  maker: text(data, "maker"),
  model: text(data, "model"),
  serial: text(data, "serial"),
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

export const recordEquipmentAction = async (state: FormState, data: FormData) => record(state, data);
export const changeEquipmentAction = async (state: FormState, data: FormData) => change(state, data);
export const setEquipmentStateAction = async (state: FormState, data: FormData) => setState(state, data);
