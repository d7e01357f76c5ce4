import { z } from "zod";
import { seenWhole } from "../typed-text";

/** amendment: some words are corrected, the results stay; replacement: the results themselves are others. */
export const amendmentKinds = ["amendment", "replacement"] as const;
export type AmendmentKind = (typeof amendmentKinds)[number];

export const amendmentKindLabels: Readonly<Record<AmendmentKind, string>> = {
  amendment: "Amendment: words are corrected, the results stay",
  replacement: "Replacement: after a new evaluation of the run",
};

/** `typed`: as a person types it now; what is stored already is read as it stands. */
const correctionsOf = (typed: (text: string, context: z.RefinementCtx<string>) => void) => {
  const line = z.string().trim().min(1).max(300).superRefine(typed);
  return z.strictObject({
    customerName: line.optional(),
    customerAddressLines: z.array(line).min(1).max(6).optional(),
    customerContact: line.optional(),
    /** Empty: no purchase order is printed. */
    purchaseOrder: z.string().trim().max(300).superRefine(typed).optional(),
    serial: line.optional(),
    construction: line.optional(),
    condition: line.optional(),
    /** A further sentence among the statements. */
    remark: z.string().trim().min(1).max(1000).superRefine(typed).optional(),
  });
};

/** What the new certificate says otherwise. Left out: as before. Results and uncertainties cannot be typed. */
export const Corrections = correctionsOf(() => undefined);
export const TypedCorrections = correctionsOf(seenWhole);
export type Corrections = z.output<typeof Corrections>;

export const correctionLabels: Readonly<Record<keyof Corrections, string>> = {
  customerName: "Customer's name",
  customerAddressLines: "Customer's address",
  customerContact: "Customer's contact",
  purchaseOrder: "Purchase order",
  serial: "Serial number",
  construction: "Construction",
  condition: "Condition at receipt",
  remark: "Remark",
};

export const readCorrections = (stored: string): Corrections => Corrections.parse(JSON.parse(stored));

export const correctedFields = (corrections: Corrections): readonly (keyof Corrections)[] =>
  (Object.keys(correctionLabels) as (keyof Corrections)[]).filter((name) => corrections[name] !== undefined);
