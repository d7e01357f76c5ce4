import { z } from "zod";

/** amendment: some words are corrected, the results stay; replacement: the results themselves are others. */
export const amendmentKinds = ["amendment", "replacement"] as const;
export type AmendmentKind = (typeof amendmentKinds)[number];

export const amendmentKindLabels: Readonly<Record<AmendmentKind, string>> = {
  amendment: "Amendment: words are corrected, the results stay",
  replacement: "Replacement: after a new evaluation of the run",
};

const line = z.string().trim().min(1).max(300);

/** What the new certificate says otherwise. Left out: as before. Results and uncertainties cannot be typed. */
export const Corrections = z.strictObject({
  customerName: line.optional(),
  customerAddressLines: z.array(line).min(1).max(6).optional(),
  customerContact: line.optional(),
  /** Empty: no purchase order is printed. */
  purchaseOrder: z.string().trim().max(300).optional(),
  serial: line.optional(),
  construction: line.optional(),
  condition: line.optional(),
  /** A further sentence among the statements. */
  remark: z.string().trim().min(1).max(1000).optional(),
});
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
