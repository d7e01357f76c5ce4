import { z } from "zod";
import { Capability } from "../evidence/capability";
import { TypeLetter } from "../evidence/schema";
import { day, requiredLine, rowVersion } from "../typed-text";

const celsius = z
  .number("Write a temperature in °C.")
  .min(-270, "At least −270 °C.")
  .max(2400, "At most 2400 °C.");

/** One line of the schedule of accreditation, as the body wrote it. */
export const ScopeLineInput = z
  .strictObject({
    typeLetter: z.enum(TypeLetter.options, "Choose the type."),
    fromCelsius: celsius,
    toCelsius: celsius,
    capability: Capability,
    validFrom: day,
    /** Left empty: until further notice. */
    validUntil: z.union([z.literal("").transform(() => null), z.null(), day]).default(null),
    source: requiredLine("Write the schedule of accreditation, its date and line.", 400),
  })
  .refine((line) => line.fromCelsius < line.toCelsius, {
    path: ["toCelsius"],
    message: "The range ends above where it begins.",
  })
  .refine((line) => line.validUntil === null || line.validFrom <= line.validUntil, {
    path: ["validUntil"],
    message: "The last day does not lie before the first.",
  });
export type ScopeLineInput = z.output<typeof ScopeLineInput>;

export const EndScopeLineInput = z.strictObject({
  id: z.uuid("Choose a line of the scope."),
  version: rowVersion,
  lastDay: day,
});
