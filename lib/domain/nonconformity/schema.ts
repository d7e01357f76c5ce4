import { z } from "zod";
import { PublicUrl } from "../question/schema";
import { requiredLine, requiredLines, rowVersion } from "../typed-text";
import { nonconformityKinds, subjectKinds } from "./labels";

const subject = {
  subjectKind: z.enum(subjectKinds, "Choose where it was found."),
  /** Its number or tag; empty for the laboratory as a whole. */
  subjectName: z.string().trim().max(200, "At most 200 characters.").default(""),
};
const said = {
  title: requiredLine("Say it in one line.", 160),
  description: requiredLines("Write what was found, when, and how it was noticed.", 4000),
};

export const OpenInput = z.strictObject({
  kind: z.enum(nonconformityKinds, "Choose what it is."),
  ...subject,
  ...said,
});

export const ComplainInput = z.strictObject({
  subjectKind: z.enum(["order", "certificate", "sensor"], "Choose what it is about."),
  subjectName: requiredLine("Write the number it is about.", 60),
  ...said,
  publicUrl: PublicUrl,
});

const which = { number: z.string().min(1), version: rowVersion };
const text = requiredLines("Write it down.", 4000);

export const EntryInput = z.strictObject({
  ...which,
  kind: z.enum(["note", "correction", "cause", "corrective-action"], "Choose what you record."),
  text,
});

/** A day, or nothing. */
const openDay = z.union([z.literal(""), z.iso.date("Write a day as 2026-03-31.")]).default("");

export const EffectInput = z.strictObject({
  ...which,
  text,
  /** By how much errors are expected to change, °C; left out = not known yet. */
  deltaCelsius: z
    .number("Write a number of °C, such as 0.4.")
    .min(-2000, "At most 2000 °C.")
    .max(2000, "At most 2000 °C.")
    .optional(),
  from: openDay,
  until: openDay,
});

export const HoldInput = z.strictObject({ ...which, text });
export const TellInput = z.strictObject({ ...which, text, publicUrl: PublicUrl });
export const StepInput = z.strictObject({ ...which, text });
