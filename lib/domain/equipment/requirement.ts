import { z } from "zod";

const celsius = z.number("Write a number, such as 300.").min(-270).max(3000).optional();

/** What a calibration of this equipment must reach to be fit for its use here, ISO/IEC 17025 6.4.5; all of it optional. */
export const Requirement = z
  .strictObject({
    fromCelsius: celsius,
    toCelsius: celsius,
    largestExpanded: z.number("Write a number, such as 0.5.").positive("Larger than nought.").optional(),
    unit: z.enum(["celsius", "microvolt"], "Choose the unit of U.").optional(),
  })
  .refine(({ largestExpanded, unit }) => (largestExpanded === undefined) === (unit === undefined), {
    path: ["unit"],
    message: "A largest U has its unit.",
  });
export type Requirement = z.output<typeof Requirement>;

/** As stored; what other hands may have added beside it is not ours to judge. */
export const readRequirement = (stored: string): Requirement => Requirement.parse(JSON.parse(stored));
