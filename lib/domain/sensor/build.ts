import { z } from "zod";

/** How a sensor is made and what it went through before it came: each field left out is "not stated", never "none". */

export const sheathForms = ["mineral-insulated", "tube", "none"] as const;
export type SheathForm = (typeof sheathForms)[number];
export const sheathFormLabels: Readonly<Record<SheathForm, string>> = {
  "mineral-insulated": "Mineral-insulated, metal-sheathed",
  tube: "Wires in a tube",
  none: "No sheath",
};

export const sheathMaterials = [
  "stainless-steel",
  "nickel-chromium",
  "alumina",
  "fluoropolymer",
  "other",
] as const;
export type SheathMaterial = (typeof sheathMaterials)[number];
export const sheathMaterialLabels: Readonly<Record<SheathMaterial, string>> = {
  "stainless-steel": "Stainless steel",
  "nickel-chromium": "Nickel-chromium alloy",
  alumina: "Alumina",
  fluoropolymer: "PTFE, PFA or FEP",
  other: "Another material",
};

export const leadInsulations = [
  "pvc",
  "nylon",
  "fep",
  "ptfe",
  "polyimide",
  "fibreglass",
  "silica",
  "ceramic-fibre",
  "bare",
] as const;
export type LeadInsulation = (typeof leadInsulations)[number];
export const leadInsulationLabels: Readonly<Record<LeadInsulation, string>> = {
  pvc: "PVC",
  nylon: "Nylon",
  fep: "FEP",
  ptfe: "PTFE or PFA",
  polyimide: "Polyimide film",
  fibreglass: "Fibreglass",
  silica: "Vitreous silica",
  "ceramic-fibre": "Ceramic fibre",
  bare: "Bare tails",
};

const millimetre = z.number("Write a number in millimetres.").positive("More than nought.");

export const SensorBuild = z.strictObject({
  wireMillimetre: millimetre.max(10).optional(),
  sheath: z.enum(sheathForms).optional(),
  sheathMillimetre: millimetre.max(60).optional(),
  sheathMaterial: z.enum(sheathMaterials).optional(),
  /** From the tip to where the lead, its transition or the head begins. */
  lengthMillimetre: millimetre.max(5000).optional(),
  leadInsulation: z.enum(leadInsulations).optional(),
  isUsed: z.boolean().optional(),
  /** What it has seen before it came, as far as the customer says. */
  highestUsedCelsius: z.number().min(-273.15).max(3000).optional(),
  deepestUsedMillimetre: millimetre.max(5000).optional(),
});
export type SensorBuild = z.output<typeof SensorBuild>;

/** As stored, JSON text; a text nobody of ours could have written is a fault and said so by the parser. */
export const readBuild = (stored: string): SensorBuild => SensorBuild.parse(JSON.parse(stored));
