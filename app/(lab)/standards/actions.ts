"use server";
import { recordCalibration } from "@/lib/operations/calibration/record";
import { changeEquipment } from "@/lib/operations/equipment/change";
import { recordEquipment } from "@/lib/operations/equipment/record";
import { setEquipmentState } from "@/lib/operations/equipment/set-state";
import { formAction } from "@/lib/web/form-action";
import { number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { parseFindings } from "./parse-findings";
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

const calibrate = formAction(recordCalibration, {
  parse: (data) => ({
    equipmentId: text(data, "equipmentId"),
    certificate: text(data, "certificate"),
    issuer: text(data, "issuer"),
    accreditation: text(data, "accreditation"),
    route: text(data, "route"),
    performedOn: text(data, "performedOn"),
    dueOn: text(data, "dueOn"),
    findings: parseFindings(data),
  }),
  done: ({ equipmentId }) => ({ redirect: `/standards/${equipmentId}` }),
});

export const recordEquipmentAction = async (state: FormState, data: FormData) => record(state, data);
export const changeEquipmentAction = async (state: FormState, data: FormData) => change(state, data);
export const setEquipmentStateAction = async (state: FormState, data: FormData) => setState(state, data);
export const recordCalibrationAction = async (state: FormState, data: FormData) => calibrate(state, data);
