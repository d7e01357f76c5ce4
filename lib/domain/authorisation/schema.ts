import { z } from "zod";
import { TypeLetter } from "../evidence/schema";
import { day, requiredLines } from "../typed-text";
import { activities, scopes } from "./authorisation";

const celsius = z.coerce
  .number("Write a temperature in °C.")
  .min(-270, "Not below −270 °C.")
  .max(2500, "Not above 2500 °C.");

/** Granted to one person by another (ISO/IEC 17025 6.2.6), on grounds that are kept (6.2.5). */
export const AuthorisationInput = z
  .strictObject({
    personId: z.uuid(),
    activity: z.enum(activities, "Choose what it is for."),
    /** None: every type. */
    typeLetters: z.array(TypeLetter).transform((held) => [...new Set(held)].toSorted()),
    fromCelsius: celsius,
    toCelsius: celsius,
    scope: z.enum(scopes, "Choose whether results outside the scope are included."),
    procedureId: z.uuid("Choose the procedure from the list.").nullable(),
    validFrom: day,
    validUntil: day.nullable(),
    basis: requiredLines("Write on what grounds: training, monitoring, comparisons.", 1000),
  })
  .refine(({ fromCelsius, toCelsius }) => fromCelsius < toCelsius, {
    path: ["toCelsius"],
    message: "Above where the range begins.",
  })
  .refine(({ validFrom, validUntil }) => validUntil === null || validFrom <= validUntil, {
    path: ["validUntil"],
    message: "Not before its first day.",
  });

export const WithdrawalInput = z.strictObject({
  authorisationId: z.uuid(),
  reason: requiredLines("Write why it ends.", 1000),
});
