import { z } from "zod";
import { hiddenCharacterIn, hiddenCharacterMessage } from "./hidden-character";

/** Refuses what cannot be seen, and names it: a name must be what it looks like. */
export const seenWhole = (text: string, context: z.RefinementCtx<string>): void => {
  const named = hiddenCharacterIn(text);
  if (named) context.addIssue({ code: "custom", message: hiddenCharacterMessage(named) });
};

/** A line somebody must type. `missing` says what belongs there. */
export const requiredLine = (missing: string, most = 200) =>
  z
    .string(missing)
    .trim()
    .min(1, missing)
    .max(most, `At most ${most} characters.`)
    .regex(/^[^\p{Cc}]*$/u, "One line, without control characters.")
    .superRefine(seenWhole);

export const optionalLine = (most = 200) =>
  z
    .string()
    .trim()
    .max(most, `At most ${most} characters.`)
    .regex(/^[^\p{Cc}]*$/u, "One line, without control characters.")
    .superRefine(seenWhole)
    .default("");

/** Several lines, line ends made equal. */
export const lines = (most: number) =>
  z
    .string()
    .transform((value) => value.replace(/\r\n?/g, "\n").trim())
    .pipe(z.string().max(most, `At most ${most} characters.`).superRefine(seenWhole));

export const requiredLines = (missing: string, most: number) =>
  z
    .string(missing)
    .transform((value) => value.replace(/\r\n?/g, "\n").trim())
    .pipe(z.string().min(1, missing).max(most, `At most ${most} characters.`).superRefine(seenWhole));

export const emailAddress = z
  .string("Write an e-mail address.")
  .trim()
  .toLowerCase()
  .max(200, "At most 200 characters.")
  .pipe(z.email("Write an e-mail address, such as name@example.org."));

export const day = z.iso.date("Write a day as 2026-03-31.");

export const rowVersion = z.int("Reload the page and try again.").min(1);
