import { z } from "zod";
import { seenWhole } from "../typed-text";

/** A field that a form sends as text and the seed as a number. */
const plainNumber = (text: string): number => (/^[+-]?\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN);

const asNumber = z
  .union([z.number(), z.string()])
  .transform((value) => (typeof value === "number" ? value : plainNumber(value.trim().replace("−", "-"))));

export const wholeNumber = (from: number, to: number, message: string) =>
  asNumber.refine((value) => Number.isInteger(value) && value >= from && value <= to, message);

export const decimalNumber = (from: number, to: number, message: string) =>
  asNumber.refine((value) => Number.isFinite(value) && value >= from && value <= to, message);

/** Left empty = null. */
export const optionalDecimal = (from: number, to: number, message: string) =>
  z
    .union([z.number(), z.string(), z.null()])
    .default("")
    .transform((value) => (typeof value === "string" && value.trim() === "" ? null : value))
    .transform((value) => (typeof value === "string" ? plainNumber(value.trim()) : value))
    .refine((value) => value === null || (Number.isFinite(value) && value >= from && value <= to), message);

export const optionalText = (most: number) =>
  z.string().trim().max(most, `At most ${most} characters.`).superRefine(seenWhole).default("");

/** A day as YYYY-MM-DD, or empty. */
export const optionalDay = z.union([z.literal(""), z.iso.date("Write the day as YYYY-MM-DD.")]).default("");
