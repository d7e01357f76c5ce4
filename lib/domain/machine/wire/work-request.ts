import { z } from "zod";
import { TypeLetter } from "../../evidence/schema";
import { protections, temperatureUnits } from "../../order/labels";
import { seenWhole } from "../../typed-text";

const text = (most: number) =>
  z
    .string()
    .trim()
    .min(1)
    .max(most)
    .regex(/^[^\p{Cc}]*$/u, "No control characters.")
    .superRefine(seenWhole);

/** A request for work, as a program sends it. The laboratory reviews it before anything is agreed. */
export const WorkRequest = z.strictObject({
  purchaseOrder: z.string().trim().max(80).superRefine(seenWhole).default(""),
  note: z.string().trim().max(2000).superRefine(seenWhole).default(""),
  lines: z
    .array(
      z.strictObject({
        typeLetter: z.enum(TypeLetter.options),
        construction: text(300).describe("Sheath, diameter, length, how it ends."),
        protection: z.enum(protections),
        quantity: z.int().min(1).max(200),
        temperatureUnit: z.enum(temperatureUnits).default("C"),
        setpoints: z.array(z.number()).max(50).default([]).describe("In the line's unit."),
      }),
    )
    .min(1)
    .max(50),
});
export type WorkRequest = z.output<typeof WorkRequest>;

export const WorkRequested = z.strictObject({ number: z.string() });
