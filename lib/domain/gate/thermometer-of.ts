import { z } from "zod";

const Figures = z.object({ thermometer: z.string().min(1) });

/** The tag of the thermometer a junction was checked with, from the stored figures of the check; null where none is named. */
export const thermometerOf = (figures: string): string | null => {
  const read = Figures.safeParse(JSON.parse(figures));
  return read.success ? read.data.thermometer : null;
};
