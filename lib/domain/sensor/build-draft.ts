import { z } from "zod";
import { optionalDecimal } from "../order/field";
import {
  leadInsulationLabels,
  leadInsulations,
  type SensorBuild,
  sheathFormLabels,
  sheathForms,
  sheathMaterialLabels,
  sheathMaterials,
} from "./build";

const millimetre = (most: number) =>
  optionalDecimal(0.01, most, `Write millimetres as a number up to ${most}, or leave it empty.`);

const uses = ["", "new", "used"] as const;

/** A sensor's build as a form sends it; every field may be left empty, which means not stated. */
export const BuildDraft = z.object({
  wireMillimetre: millimetre(10),
  sheath: z.enum(["", ...sheathForms]).default(""),
  sheathMillimetre: millimetre(60),
  sheathMaterial: z.enum(["", ...sheathMaterials]).default(""),
  lengthMillimetre: millimetre(5000),
  leadInsulation: z.enum(["", ...leadInsulations]).default(""),
  use: z.enum(uses).default(""),
  highestUsedCelsius: optionalDecimal(-273.15, 3000, "Write °C as a number, or leave it empty."),
  deepestUsedMillimetre: millimetre(5000),
});
export type BuildDraft = z.output<typeof BuildDraft>;

const stated = <T extends object>(fields: T): { [K in keyof T]?: Exclude<T[K], null | "" | undefined> } =>
  Object.fromEntries(
    Object.entries(fields).filter(([, value]) => value !== null && value !== "" && value !== undefined),
  ) as { [K in keyof T]?: Exclude<T[K], null | "" | undefined> };

/** What was stated, and nothing else. */
export const buildOf = ({ use, ...draft }: BuildDraft): SensorBuild =>
  stated({
    wireMillimetre: draft.wireMillimetre,
    sheath: draft.sheath,
    sheathMillimetre: draft.sheathMillimetre,
    sheathMaterial: draft.sheathMaterial,
    lengthMillimetre: draft.lengthMillimetre,
    leadInsulation: draft.leadInsulation,
    isUsed: use === "" ? undefined : use === "used",
    highestUsedCelsius: draft.highestUsedCelsius,
    deepestUsedMillimetre: draft.deepestUsedMillimetre,
  });

export const earlierUseLabels: Readonly<Record<(typeof uses)[number], string>> = {
  "": "Not stated",
  new: "New",
  used: "Used before",
};

const mm = (value: number | undefined): string => (value === undefined ? "" : `${value} mm`);

/** The build line by line, as a page shows it; what is not stated is left empty. */
export const buildLines = (
  build: SensorBuild,
): readonly { readonly label: string; readonly value: string }[] => [
  { label: "Wire", value: mm(build.wireMillimetre) },
  { label: "Sheath", value: build.sheath ? sheathFormLabels[build.sheath] : "" },
  { label: "Outer diameter", value: mm(build.sheathMillimetre) },
  {
    label: "Sheath material",
    value: build.sheathMaterial ? sheathMaterialLabels[build.sheathMaterial] : "",
  },
  { label: "Length to the lead", value: mm(build.lengthMillimetre) },
  {
    label: "Lead insulation",
    value: build.leadInsulation ? leadInsulationLabels[build.leadInsulation] : "",
  },
  {
    label: "Before it came",
    value: build.isUsed === undefined ? "" : build.isUsed ? earlierUseLabels.used : earlierUseLabels.new,
  },
  {
    label: "Highest known",
    value: build.highestUsedCelsius === undefined ? "" : `${build.highestUsedCelsius} °C`,
  },
  { label: "Deepest known", value: mm(build.deepestUsedMillimetre) },
];
