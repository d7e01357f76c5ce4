import type { SurveyKind } from "@/lib/domain/furnace/survey-kinds";
import { number, optionalNumber, text } from "@/lib/web/form-fields";
import { parseSurvey } from "./parse-survey";

type Uploaded = { readonly fileName: string; readonly bytes: Uint8Array } | null;

/** The lines, or the file where one was chosen: a file counts for the whole of its survey. */
export const parseSurveyForm = (data: FormData, file: Uploaded) => {
  const kind = text(data, "kind") as SurveyKind;
  return {
    characterisationRunId: text(data, "characterisationRunId"),
    celsius: number(data, "celsius"),
    measuredOn: text(data, "measuredOn"),
    readings: file ? null : parseSurvey(data, kind),
    file: file && {
      kind,
      ...file,
      junctionCelsius: number(data, "readings.junctionCelsius"),
      centre: text(data, "readings.centre"),
      limitCelsius: optionalNumber(data, "readings.limitCelsius") ?? null,
    },
  };
};
