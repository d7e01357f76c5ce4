"use server";
import { endScopeLine } from "@/lib/operations/scope/end-line";
import { recordScopeLine } from "@/lib/operations/scope/record-line";
import { formAction } from "@/lib/web/form-action";
import { number, parseDecimal, rows, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

/** A power left out between two others is a figure that is missing; left out at the end it is none. */
const withoutEmptyEnd = (typed: readonly string[]): readonly string[] =>
  typed.slice(0, typed.findLastIndex((one) => one.trim() !== "") + 1);

/** The fields of the form that was chosen; the others were not on the page. */
const capability = (data: FormData) => {
  const kind = text(data, "capability.kind");
  switch (kind) {
    case "proportional":
      return {
        kind,
        constantCelsius: number(data, "capability.constantCelsius"),
        perCelsius: number(data, "capability.perCelsius"),
      };
    case "polynomial":
      return {
        kind,
        coefficientsCelsius: withoutEmptyEnd(data.getAll("capability.coefficientsCelsius").map(String)).map(
          parseDecimal,
        ),
      };
    case "table":
      return {
        kind,
        points: rows(data, "capability.points", ["celsius", "expandedCelsius"]).map((row) => ({
          celsius: parseDecimal(row.celsius ?? ""),
          expandedCelsius: parseDecimal(row.expandedCelsius ?? ""),
        })),
      };
    default:
      return { kind: "constant", expandedCelsius: number(data, "capability.expandedCelsius") };
  }
};

const record = formAction(recordScopeLine, {
  parse: (data) => ({
    typeLetter: text(data, "typeLetter"),
    fromCelsius: number(data, "fromCelsius"),
    toCelsius: number(data, "toCelsius"),
    capability: capability(data),
    validFrom: text(data, "validFrom"),
    validUntil: text(data, "validUntil"),
    source: text(data, "source"),
  }),
  done: () => ({ redirect: "/scope" }),
});
export const recordScopeLineAction = async (state: FormState, data: FormData) => record(state, data);

const end = formAction(endScopeLine, {
  parse: (data) => ({
    id: text(data, "id"),
    version: number(data, "version"),
    lastDay: text(data, "lastDay"),
  }),
  done: () => "The line is ended.",
});
export const endScopeLineAction = async (state: FormState, data: FormData) => end(state, data);
