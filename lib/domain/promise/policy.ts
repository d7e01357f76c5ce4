import { z } from "zod";

const positive = (most: number, unit: string) => {
  const message = `Write ${unit} as a number above 0, up to ${most}.`;
  return z.number(message).positive(message).max(most, message);
};
const whole = (least: number, most: number, what: string) => {
  const message = `Write ${what} as a whole number from ${least} to ${most}.`;
  return z.int(message).min(least, message).max(most, message);
};

/**
 * What a day is reckoned with where the laboratory's own records say nothing. The figures that the platform comes with
 * are common practice, no source: each laboratory's furnaces and people differ, and the quality manager sets its own. A
 * promise may always be made by hand with a reason.
 */
export const PromisePolicy = z.strictObject({
  /** Where a furnace starts from, and below which it may be opened and unloaded. */
  ambientCelsius: positive(50, "°C").default(25),
  openBelowCelsius: positive(200, "°C").default(60),
  /** For a furnace whose record names no rate. */
  rampUpCelsiusPerHour: positive(2000, "°C/h").default(300),
  rampDownCelsiusPerHour: positive(2000, "°C/h").default(150),
  /** At a setpoint: settling, stability and the readings. */
  dwellHours: positive(24, "hours").default(0.75),
  loadingHours: positive(24, "hours").default(1),
  /** Places of a load that are not the customer's. */
  referencesPerLoad: whole(1, 10, "places").default(2),
  /** Hours of the day (UTC) in which somebody is beside a heating furnace; it cools without company. */
  dayStartsHour: whole(0, 23, "the hour").default(8),
  dayEndsHour: whole(1, 24, "the hour").default(17),
  /** 1 = Monday. */
  workingDays: z
    .array(whole(1, 7, "a day"))
    .min(1, "Choose one day at least.")
    .default([1, 2, 3, 4, 5]),
  /** Working days between the last load and the certificates: evaluation, review, sign-off. */
  reviewDays: whole(0, 60, "days").default(2),
});
export type PromisePolicy = Readonly<z.output<typeof PromisePolicy>>;

export const defaultPromisePolicy: PromisePolicy = PromisePolicy.parse({});

/** As stored, JSON text; what is not set is the default. */
export const readPromisePolicy = (stored: string): PromisePolicy => PromisePolicy.parse(JSON.parse(stored));

/** For a screen: 1 = Monday. */
export const dayNames = [
  "Monday",
  "Tuesday",
  "Wednesday",
  "Thursday",
  "Friday",
  "Saturday",
  "Sunday",
] as const;
