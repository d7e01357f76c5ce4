"use server";
import { decideReport } from "@/lib/operations/provider/decide-report";
import { recordReport } from "@/lib/operations/provider/record-report";
import { annealSensor } from "@/lib/operations/sensor/anneal";
import { formAction } from "@/lib/web/form-action";
import { rows, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { uploadedFile } from "../../standards/parse-calibration";

const anneal = formAction(annealSensor, {
  parse: (data) => ({
    sensor: text(data, "sensor"),
    celsius: text(data, "celsius"),
    hours: text(data, "hours"),
    manner: text(data, "manner"),
    performedOn: text(data, "performedOn"),
  }),
  done: ({ tag }) => `The annealing of ${tag} is recorded; it can be loaded for its next set.`,
});
const decide = formAction(decideReport, {
  parse: (data) => ({
    id: text(data, "id"),
    decision: text(data, "decision"),
    reason: text(data, "reason"),
  }),
  done: ({ tag, decision }) =>
    decision === "accepted" ? `What was measured of ${tag} counts now.` : `The record of ${tag} is rejected.`,
});
const columns = ["orderedCelsius", "nominalCelsius", "value", "expanded", "coverageFactor"];

export const annealSensorAction = async (state: FormState, data: FormData) => anneal(state, data);
export const decideReportAction = async (state: FormState, data: FormData) => decide(state, data);

/** A file is read before the form is: reading takes its time, parsing does not. */
export const recordReportAction = async (state: FormState, data: FormData) => {
  const file = await uploadedFile(data, "document");
  const record = formAction(recordReport, {
    parse: (form) => ({
      sensor: text(form, "sensor"),
      certificate: text(form, "certificate"),
      issuedOn: text(form, "issuedOn"),
      accreditation: text(form, "accreditation"),
      unit: text(form, "unit"),
      results: rows(form, "results", columns),
      correction: text(form, "correction"),
      ...(file ? { document: file } : {}),
    }),
    done: ({ tag }) => `Their certificate for ${tag} is recorded; it counts once another person agrees.`,
  });
  return record(state, data);
};
