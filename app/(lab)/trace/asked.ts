import { z } from "zod";

type Asked = string | readonly string[] | undefined;

const Day = z.iso.date();

/** The day of the address, or today (UTC, as all days here). */
export const askedDay = (on: Asked, now: Date): string => {
  const day = Day.safeParse(on);
  return day.success ? day.data : now.toISOString().slice(0, 10);
};

/** A whole number of the address from 1, or null. */
export const askedNumber = (text: Asked): number | null =>
  typeof text === "string" && /^[1-9]\d{0,5}$/.test(text) ? Number(text) : null;

/** A temperature of the address, °C, or null. */
export const askedCelsius = (text: Asked): number | null =>
  typeof text === "string" && /^-?\d{1,4}(\.\d{1,6})?$/.test(text) ? Number(text) : null;

/** Which sensor of a certificate for several: its place, or its label; else null. */
export const askedPart = (text: Asked): string | null =>
  typeof text === "string" && /^(?:\d{1,3}|T-\d{1,10})$/.test(text) ? text : null;
