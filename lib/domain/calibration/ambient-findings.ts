import { z } from "zod";
import { coverageFactor, expanded, figure, note } from "./certificate-figures";

/** What tells the room: a correction for its temperature, and for its humidity where it tells one. */
export const AmbientFindings = z.strictObject({
  kind: z.literal("ambient"),
  /** To be added to the indication. */
  correctionCelsius: figure.min(-20).max(20),
  expandedCelsius: expanded,
  humidity: z
    .strictObject({ correctionPercent: figure.min(-50).max(50), expandedPercent: expanded })
    .optional(),
  coverageFactor,
  note,
});
export type AmbientFindings = z.output<typeof AmbientFindings>;
