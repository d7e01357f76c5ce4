import { z } from "zod";
import { decimalNumber, wholeNumber } from "../order/field";
import { requiredLine, rowVersion } from "../typed-text";
import type { PromisePolicy } from "./policy";

const hours = decimalNumber(0.05, 24, "Write hours as a number from 0.05 to 24.");
const rate = decimalNumber(1, 2000, "Write °C/h as a number from 1 to 2000.");
const days = z.array(wholeNumber(1, 7, "Choose days of the week.")).min(1, "Choose one day at least.");

/** What a day is reckoned with, as the quality manager's form sends it. */
export const ChangePromisePolicyInput = z
  .strictObject({
    version: rowVersion,
    ambientCelsius: decimalNumber(1, 50, "Write °C as a number from 1 to 50."),
    openBelowCelsius: decimalNumber(20, 200, "Write °C as a number from 20 to 200."),
    rampUpCelsiusPerHour: rate,
    rampDownCelsiusPerHour: rate,
    dwellHours: hours,
    loadingHours: hours,
    referencesPerLoad: wholeNumber(1, 10, "Write places as a whole number from 1 to 10."),
    dayStartsHour: wholeNumber(0, 23, "Write the hour as a whole number from 0 to 23, in UTC."),
    dayEndsHour: wholeNumber(1, 24, "Write the hour as a whole number from 1 to 24, in UTC."),
    workingDays: days,
    reviewDays: wholeNumber(0, 60, "Write days as a whole number from 0 to 60."),
    reason: requiredLine("Say why: whoever reads this later was not there.", 400),
  })
  .refine(({ dayStartsHour, dayEndsHour }) => dayEndsHour > dayStartsHour, {
    path: ["dayEndsHour"],
    message: "The day ends after it begins. One that goes past midnight UTC is written up to 24.",
  })
  .refine(({ ambientCelsius, openBelowCelsius }) => openBelowCelsius > ambientCelsius, {
    path: ["openBelowCelsius"],
    message: "It is opened above the temperature of the room: write a higher one.",
  })
  .transform(({ version, reason, workingDays, ...typed }) => {
    const policy: PromisePolicy = { ...typed, workingDays: [...new Set(workingDays)].toSorted() };
    return { version, reason, policy };
  });
