import type { SurveyKind } from "@/lib/domain/furnace/survey-kinds";
import { number, parseDecimal, rows, text } from "@/lib/web/form-fields";
import { surveyColumns } from "./survey-columns";

/** Written in before anything is measured: a line with only these is not a reading. */
const prepared: Readonly<Record<SurveyKind, readonly string[]>> = {
  axial: ["millimetre"],
  immersion: ["millimetre"],
  positions: ["arrangement", "place", "sensor"],
  stability: ["minutes"],
};

/** The lines that were filled in; those at the end that only say where a reading would stand are left out. */
const filledRows = (data: FormData, kind: SurveyKind): Record<string, string>[] => {
  const columns = surveyColumns[kind].map(({ key }) => key);
  const all = rows(data, "readings.rows", columns);
  const last = all.findLastIndex((row) =>
    Object.entries(row).some(([key, value]) => value !== "" && !prepared[kind].includes(key)),
  );
  return all.slice(0, last + 1);
};

/** A survey as typed → what its schema judges. Runs in the action and, for the picture beside it, in the browser. */
export const parseSurvey = (data: FormData, kind: SurveyKind): unknown => ({
  kind,
  unit: text(data, "readings.unit"),
  junctionCelsius: number(data, "readings.junctionCelsius"),
  ...(kind === "positions" ? { centre: text(data, "readings.centre") } : {}),
  ...(kind === "immersion" ? { limitCelsius: number(data, "readings.limitCelsius") } : {}),
  rows: filledRows(data, kind).map((row) =>
    Object.fromEntries(
      surveyColumns[kind].map(({ key, isText }) => {
        const typed = row[key] ?? "";
        if (isText) return [key, typed];
        return [key, key === "minutes" && kind !== "stability" && typed === "" ? null : parseDecimal(typed)];
      }),
    ),
  ),
});
