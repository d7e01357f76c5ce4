import { z } from "zod";

/** Figures that certificates of every kind print. */

export const figure = z.number("Write a number, such as -8.75.");
export const expanded = z
  .number("Write U as a number, such as 0.3.")
  .positive("U is larger than nought on every certificate.");
export const coverageFactor = z
  .number("Write k as the certificate states it, such as 2.")
  .min(1, "k is 1 or more.")
  .max(15, "k is hardly ever above 14; look at the certificate again.");
/** What the certificate says beside its figures; goes into the evidence word for word. */
export const note = z.string().trim().max(600, "At most 600 characters.").default("");

/** The points must rise: between two of them the deviation is taken as a straight line. */
export const rising = (values: readonly number[]): boolean =>
  values.every((value, index) => index === 0 || value > (values[index - 1] ?? value));
