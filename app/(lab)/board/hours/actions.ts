"use server";
import { changePromisePolicy } from "@/lib/operations/promise/change-policy";
import { formAction } from "@/lib/web/form-action";
import { number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const typed = [
  "ambientCelsius",
  "openBelowCelsius",
  "rampUpCelsiusPerHour",
  "rampDownCelsiusPerHour",
  "dwellHours",
  "loadingHours",
  "referencesPerLoad",
  "dayStartsHour",
  "dayEndsHour",
  "reviewDays",
  "reason",
] as const;

const change = formAction(changePromisePolicy, {
  parse: (data) => ({
    ...Object.fromEntries(typed.map((name) => [name, text(data, name)])),
    version: number(data, "version"),
    workingDays: data.getAll("workingDays").map(String),
  }),
  done: () => "Days are promised by it from now on.",
});

export const changePromisePolicyAction = async (state: FormState, data: FormData) => change(state, data);
