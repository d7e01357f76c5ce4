import { z } from "zod";
import { coverageFactor, expanded, figure, note } from "./certificate-figures";

/** A lot of lead or cable as tested: what is to be added to the emf, over the temperatures of its ends. */
export const LeadFindings = z
  .strictObject({
    kind: z.literal("lead"),
    correctionMicrovolt: figure.min(-1000).max(1000),
    fromCelsius: figure.min(-100).max(250),
    toCelsius: figure.min(-100).max(250),
    expandedMicrovolt: expanded,
    coverageFactor,
    note,
  })
  .refine(({ fromCelsius, toCelsius }) => fromCelsius < toCelsius, {
    path: ["toCelsius"],
    message: "Must lie above where it begins.",
  });
