"use server";
import { checkKeys } from "@/lib/domain/calibration/acceptance-check";
import { adoptCertificate } from "@/lib/operations/calibration/adopt-certificate";
import { decideCalibration } from "@/lib/operations/calibration/decide";
import { receiveDigital } from "@/lib/operations/calibration/receive-digital";
import { recordCalibration } from "@/lib/operations/calibration/record";
import { env } from "@/lib/web/env";
import { formAction } from "@/lib/web/form-action";
import { flag, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { parseCalibration, uploadedFile } from "../../parse-calibration";

const decide = formAction(decideCalibration, {
  parse: (data) => ({
    id: text(data, "id"),
    decision: text(data, "decision"),
    confirmed: checkKeys.filter((key) => flag(data, `confirmed.${key}`)),
    reason: text(data, "reason"),
  }),
  done: () => "The decision is recorded.",
});

const adopt = formAction(adoptCertificate, {
  parse: (data) => ({
    equipmentId: text(data, "equipmentId"),
    certificate: text(data, "certificate"),
    dueOn: text(data, "dueOn"),
  }),
  done: ({ id, equipmentId }) => ({ redirect: `/standards/${equipmentId}/calibrations/${id}` }),
});

export const decideCalibrationAction = async (state: FormState, data: FormData) => decide(state, data);
export const adoptCertificateAction = async (state: FormState, data: FormData) => adopt(state, data);

/** A file is read before the form is: reading takes its time, parsing does not. */
export const recordCalibrationAction = async (state: FormState, data: FormData) => {
  const file = await uploadedFile(data, "document");
  const record = formAction(recordCalibration, {
    parse: (form) => parseCalibration(form, file),
    done: ({ id, equipmentId }) => ({ redirect: `/standards/${equipmentId}/calibrations/${id}` }),
  });
  return record(state, data);
};

export const receiveDigitalAction = async (state: FormState, data: FormData) => {
  const file = await uploadedFile(data, "file");
  const receive = formAction(receiveDigital, {
    parse: (form) => ({ equipmentId: text(form, "equipmentId"), file, schemaFolder: env().dccSchemaFolder }),
    done: ({ documentId, equipmentId }) => ({
      redirect: `/standards/${equipmentId}/calibrations/new?document=${documentId}`,
    }),
  });
  return receive(state, data);
};
