import type { SurveyKind } from "@/lib/domain/furnace/survey-kinds";
import type { ReadingUnit } from "@/lib/domain/furnace/survey-readings";
import { readColumnTable, type TableColumn } from "./column-table";
import type { ReadingsProblem } from "./readings-problem";

/** Rows named like the fields of the form, so that a refusal finds its place in either. */
export type SurveyRow = Readonly<Record<string, number | string | null>>;

export type SurveyFile =
  | { readonly ok: true; readonly unit: ReadingUnit; readonly rows: readonly SurveyRow[] }
  | { readonly ok: false; readonly problem: ReadingsProblem };

const inEither = (name: string): TableColumn => ({ names: [`${name}_uV`, `${name}_C`], kind: "number" });
const stops = {
  millimetre: { names: ["position_mm", "depth_mm"], kind: "number" },
  probe: inEither("probe"),
  monitor: inEither("monitor"),
  minutes: { names: ["minutes"], kind: "number", isOptional: true },
} as const satisfies Readonly<Record<string, TableColumn>>;

/** The columns of each survey's file, by the field they fill. */
const surveyColumns: Readonly<Record<SurveyKind, Readonly<Record<string, TableColumn>>>> = {
  axial: stops,
  immersion: stops,
  positions: {
    arrangement: { names: ["arrangement"], kind: "number" },
    place: { names: ["place"], kind: "text" },
    sensor: { names: ["sensor"], kind: "text" },
    value: inEither("reading"),
  },
  stability: { minutes: { names: ["minutes"], kind: "number" }, value: inEither("monitor") },
};

/** The header lines of a survey's file, for whoever writes one. */
export const surveyHeader = (kind: SurveyKind): string =>
  Object.values(surveyColumns[kind])
    .map(({ names }) => names[0])
    .join(",");

/** Reads a survey's file: all its readings in µV, or all in °C, as the names of its columns say. */
export const readSurveyCsv = (bytes: Uint8Array, kind: SurveyKind): SurveyFile => {
  const columns = Object.entries(surveyColumns[kind]);
  const read = readColumnTable(
    bytes,
    columns.map(([, column]) => column),
  );
  if (!read.ok) return read;
  const { found, rows } = read.table;
  const units = new Set(found.flatMap((name) => /_(uv|c)$/.exec(name ?? "")?.[1] ?? []));
  if (units.size > 1)
    return {
      ok: false,
      problem: {
        line: 1,
        column: null,
        message: "Some columns are in µV, some in °C. Write all in one unit.",
      },
    };
  if (rows.length === 0)
    return {
      ok: false,
      problem: { line: null, column: null, message: "The table has no line of readings." },
    };
  return {
    ok: true,
    unit: units.has("uv") ? "microvolt" : "celsius",
    rows: rows.map((row) => Object.fromEntries(columns.map(([field], i) => [field, row[i] ?? null]))),
  };
};
