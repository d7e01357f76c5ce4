import { z } from "zod";
import { printedText } from "../certificate/printable/printed-text";
import { protections } from "../order/labels";

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
    /** One of those that a sensor can have; the certificate has its words from the catalogue. */
    protection: z.enum(protections, "Choose what surrounds the wires.").optional(),
    /** Lot, roll and end, as they are to be printed. */
    material: line.optional(),
    receivedOn: z.iso.date("Write the day as YYYY-MM-DD.").optional(),
    condition: line.optional(),
    /** A further sentence among the statements, under a caption that says what it is. */
    remark: z.string().trim().min(1).max(1000).superRefine(typed).optional(),
  });
};

/** What the new certificate says otherwise. Left out: as before. Results and uncertainties cannot be typed. */
export const Corrections = correctionsOf(() => undefined);
export const TypedCorrections = correctionsOf(printedText);
export type Corrections = z.output<typeof Corrections>;

export const correctionLabels: Readonly<Record<keyof Corrections, string>> = {
  customerName: "Customer's name",
  customerAddressLines: "Customer's address",
  customerContact: "Customer's contact",
  purchaseOrder: "Purchase order",
  serial: "Serial number",
  construction: "Construction",
  protection: "Protection",
  material: "Lot, roll and end",
  receivedOn: "Received on",
  condition: "Condition at receipt",
  remark: "Remark",
};

export const readCorrections = (stored: string): Corrections => Corrections.parse(JSON.parse(stored));

export const correctedFields = (corrections: Corrections): readonly (keyof Corrections)[] =>
  (Object.keys(correctionLabels) as (keyof Corrections)[]).filter((name) => corrections[name] !== undefined);
