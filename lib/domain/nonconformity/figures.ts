import { z } from "zod";
import { impactClasses } from "./labels";

/** What an entry holds beside its words, as JSON text. Everything is optional: most entries are words alone. */
export const EntryFigures = z.strictObject({
  /** Expected change of the error, °C; null = not known. */
  deltaCelsius: z.number().nullable().optional(),
  /** ISO days of the measurements that are concerned; empty = no limit. */
  from: z.string().optional(),
  until: z.string().optional(),
  certificates: z
    .array(
      z.strictObject({
        number: z.string(),
        orderNumber: z.string(),
        customerId: z.string(),
        results: z.number().int(),
        /** Largest |δ|/U; null where δ is not known. */
        largestRatio: z.number().nullable(),
        impact: z.enum(impactClasses),
      }),
    )
    .optional(),
  /** Runs that are not signed off yet. */
  runs: z.array(z.string()).optional(),
  /** Tags of the sensors that stand still. */
  sensors: z.array(z.string()).optional(),
  told: z.array(z.strictObject({ customerId: z.string(), orders: z.array(z.string()) })).optional(),
});
export type EntryFigures = z.infer<typeof EntryFigures>;

export const readFigures = (stored: string): EntryFigures => EntryFigures.parse(JSON.parse(stored));
