import { z } from "zod";

const Basis = z.object({
  slots: z.array(z.object({ furnace: z.string(), sensors: z.number(), startsAt: z.string() })).default([]),
});

/** Which hours a promise was given with, and for how many sensors each; none where none is told. */
export const readPromiseBasis = (stored: string | null): z.output<typeof Basis>["slots"] =>
  stored === null ? [] : Basis.parse(JSON.parse(stored)).slots;
