import { z } from "zod";
import { lines, optionalLine, requiredLine, requiredLines, rowVersion } from "../typed-text";

export const LaboratoryInput = z.strictObject({
  name: requiredLine("Write the laboratory's name as it stands on certificates.", 160),
  addressLines: requiredLines("Write the postal address, one line each.", 400),
  contact: requiredLine("Write how customers reach the laboratory.", 200),
  /** The laboratory's own words; empty claims nothing. */
  accreditationText: lines(600),
  /** As the body gave it; empty: none. */
  accreditationNumber: optionalLine(80),
  countryCode: z
    .string()
    .trim()
    .toUpperCase()
    .pipe(z.string().regex(/^[A-Z]{2}$/, "Two letters, such as GB (ISO 3166-1).")),
  performerMaySignOff: z.boolean(),
});

export const LaboratoryChange = LaboratoryInput.extend({ version: rowVersion });
