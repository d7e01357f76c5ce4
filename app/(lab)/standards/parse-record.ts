import { number, optionalNumber, optionalText, text } from "@/lib/web/form-fields";

const whole = (data: FormData, name: string): number | null =>
  text(data, name) === "" ? null : number(data, name);

/** The record of 6.4.13 as typed; what was left empty is not recorded yet. */
export const parseRecord = (data: FormData): Record<string, unknown> => ({
  firmware: text(data, "firmware"),
  location: text(data, "location"),
  receivedOn: optionalText(data, "receivedOn") ?? null,
  calibrationIntervalMonths: whole(data, "calibrationIntervalMonths"),
  checkIntervalDays: whole(data, "checkIntervalDays"),
  maintenanceIntervalDays: whole(data, "maintenanceIntervalDays"),
  requirement: {
    fromCelsius: optionalNumber(data, "requirement.fromCelsius"),
    toCelsius: optionalNumber(data, "requirement.toCelsius"),
    largestExpanded: optionalNumber(data, "requirement.largestExpanded"),
    unit: optionalText(data, "requirement.unit"),
  },
});
