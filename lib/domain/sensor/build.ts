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

export const wireInsulations = [
  "mgo",
  "alumina-powder",
  "ceramic-beads",
  "fibreglass",
  "polymer",
  "other",
] as const;
export type WireInsulation = (typeof wireInsulations)[number];
export const wireInsulationLabels: Readonly<Record<WireInsulation, string>> = {
  mgo: "Magnesium oxide",
  "alumina-powder": "Alumina, compacted",
  "ceramic-beads": "Ceramic tube or beads",
  fibreglass: "Fibreglass",
  polymer: "Polymer",
  other: "Another insulation",
};

export const connectors = ["standard-plug", "miniature-plug", "head", "tails", "other"] as const;
export type Connector = (typeof connectors)[number];
export const connectorLabels: Readonly<Record<Connector, string>> = {
  "standard-plug": "Standard plug",
  "miniature-plug": "Miniature plug",
  head: "Connection head",
  tails: "Tails without a plug",
  other: "Another connector",
};

/** Which end of its roll a piece was cut from. */
export const rollEnds = ["first", "second"] as const;
export type RollEnd = (typeof rollEnds)[number];
export const rollEndLabels: Readonly<Record<RollEnd, string>> = {
  first: "First end",
  second: "Second end",
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
  /** Of the wires inside the sheath; that of the lead is its own. */
  wireInsulation: z.enum(wireInsulations).optional(),
  leadMillimetre: z.number().positive().max(100_000).optional(),
  connector: z.enum(connectors).optional(),
  /** The material's identity where the customer is audited by it: heat or batch, and the roll of it. */
  lot: z.string().min(1).max(60).optional(),
  roll: z.string().min(1).max(60).optional(),
  end: z.enum(rollEnds).optional(),
  isUsed: z.boolean().optional(),
  /** It was asked what it went through, and nobody knows. */
  isHistoryUnknown: z.literal(true).optional(),
  /** What it has seen before it came, as far as the customer says. */
  highestUsedCelsius: z.number().min(-273.15).max(3000).optional(),
  deepestUsedMillimetre: millimetre.max(5000).optional(),
  usedHours: z.number().min(0).max(1_000_000).optional(),
  /** Atmosphere or process, as the customer says it. */
  usedIn: z.string().min(1).max(120).optional(),
});
export type SensorBuild = z.output<typeof SensorBuild>;

/** As stored, JSON text; a text nobody of ours could have written is a fault and said so by the parser. */
export const readBuild = (stored: string): SensorBuild => SensorBuild.parse(JSON.parse(stored));
