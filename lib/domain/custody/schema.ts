import { z } from "zod";
import { lines, optionalLine, requiredLine, requiredLines, rowVersion } from "../typed-text";

/** What a scanner types: one code after the other, on lines of their own or with blanks or commas between. */
export const ScannedTags = z
  .string("Scan the sensors' labels.")
  .max(20_000, "At most 20 000 characters.")
  .transform((typed) => [
    ...new Set(
      typed
        .split(/[\s,;]+/)
        .map((code) => /(T-\d+)$/i.exec(code)?.[1]?.toUpperCase() ?? code)
        .filter((code) => code !== ""),
    ),
  ])
  .pipe(z.array(z.string()).min(1, "Scan one label at least.").max(500, "At most 500 sensors at once."));

export const MoveInput = z.strictObject({
  tags: ScannedTags,
  kind: z.enum(["stored", "from-furnace", "to-provider", "from-provider"], "Choose what happened."),
  /** The code of the storage place, as scanned or chosen. */
  placeCode: z.string().trim().default(""),
  /** From or to whom, where it left the house. */
  whom: optionalLine(160),
  condition: lines(400).default(""),
});

const place = {
  name: requiredLine("Write what the place is, such as “dry cabinet, shelf 2”.", 120),
  conditions: optionalLine(200),
};

export const RecordPlaceInput = z.strictObject({
  code: requiredLine("Write the code on its label.", 20).pipe(
    z.string().regex(/^[A-Z0-9-]+$/, "Capital letters, digits and hyphens, such as S-01."),
  ),
  ...place,
});
export const ChangePlaceInput = z.strictObject({
  id: z.uuid(),
  version: rowVersion,
  ...place,
  active: z.boolean(),
});

export const DisposeInput = z.strictObject({
  tag: z.string().trim().min(1, "Scan the sensor's label."),
  /** Who of the customer asked for it, when and how. */
  instruction: requiredLines("Write who of the customer asked for it, when and how.", 400),
});

export const RetentionInput = z.strictObject({
  version: rowVersion,
  days: z.int("Write whole days.").min(1, "One day at least.").max(3650, "At most 3650 days."),
});
