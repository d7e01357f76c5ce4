import { z } from "zod";

const millimetre = z.number("Write a number in millimetres.").min(-500).max(500);

/** A bore of an equalising block: its number as it is stamped, its centre measured from the block's own, in mm. */
export const Bore = z.strictObject({
  number: z.string().trim().min(1, "Write the number as it is stamped.").max(10, "At most 10 characters."),
  diameterMillimetre: millimetre.positive("More than nought."),
  xMillimetre: millimetre,
  yMillimetre: millimetre,
});
export type Bore = z.infer<typeof Bore>;

export const Bores = z
  .array(Bore)
  .max(60, "At most 60 bores.")
  .refine(
    (bores) => new Set(bores.map(({ number }) => number)).size === bores.length,
    "A number stands twice.",
  );

/** Stored text read back. It was judged when it was written, so a misfit is a defect and throws. */
export const readBores = (text: string): readonly Bore[] => Bores.parse(JSON.parse(text));
