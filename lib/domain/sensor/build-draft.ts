import { z } from "zod";
import { printedText } from "../certificate/printable/printed-text";
import { optionalDecimal } from "../order/field";
import { optionalLine } from "../typed-text";
import {
  connectorLabels,
  connectors,
  leadInsulationLabels,
  leadInsulations,
  rollEndLabels,
  rollEnds,
  type SensorBuild,
  sheathFormLabels,
  sheathForms,
  sheathMaterialLabels,
  sheathMaterials,
  wireInsulationLabels,
  wireInsulations,
} from "./build";

const millimetre = (most: number) =>
  optionalDecimal(0.01, most, `Write millimetres as a number up to ${most}, or leave it empty.`);

export const uses = ["", "new", "used", "not-known"] as const;

/** A sensor's build as a form sends it; every field may be left empty, which means not stated. */
export const BuildDraft = z.object({
  wireMillimetre: millimetre(10),
  sheath: z.enum(["", ...sheathForms]).default(""),
  sheathMillimetre: millimetre(60),
  sheathMaterial: z.enum(["", ...sheathMaterials]).default(""),
  lengthMillimetre: millimetre(5000),
  leadInsulation: z.enum(["", ...leadInsulations]).default(""),
  wireInsulation: z.enum(["", ...wireInsulations]).default(""),
  leadMillimetre: millimetre(100_000),
  connector: z.enum(["", ...connectors]).default(""),
  lot: optionalLine(60).superRefine(printedText),
  roll: optionalLine(60).superRefine(printedText),
  end: z.enum(["", ...rollEnds]).default(""),
  use: z.enum(uses).default(""),
  highestUsedCelsius: optionalDecimal(-273.15, 3000, "Write °C as a number, or leave it empty."),
  deepestUsedMillimetre: millimetre(5000),
  usedHours: optionalDecimal(0, 1_000_000, "Write hours as a number, or leave it empty."),
  usedIn: optionalLine(120).superRefine(printedText),
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
    wireInsulation: draft.wireInsulation,
    leadMillimetre: draft.leadMillimetre,
    connector: draft.connector,
    lot: draft.lot,
    roll: draft.roll,
    end: draft.end,
    isUsed: use === "new" || use === "used" ? use === "used" : undefined,
    isHistoryUnknown: use === "not-known" ? (true as const) : undefined,
    highestUsedCelsius: draft.highestUsedCelsius,
    deepestUsedMillimetre: draft.deepestUsedMillimetre,
    usedHours: draft.usedHours,
    usedIn: draft.usedIn,
  });

export const earlierUseLabels: Readonly<Record<(typeof uses)[number], string>> = {
  "": "Not stated",
  new: "New",
  used: "Used before",
  "not-known": "Asked, and not known",
};

/** The word of the form for what is stored. */
export const earlierUseOf = (build: SensorBuild): (typeof uses)[number] => {
  if (build.isHistoryUnknown) return "not-known";
  return build.isUsed === undefined ? "" : build.isUsed ? "used" : "new";
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
    label: "Wire insulation",
    value: build.wireInsulation ? wireInsulationLabels[build.wireInsulation] : "",
  },
  { label: "Lead length", value: mm(build.leadMillimetre) },
  { label: "Connector", value: build.connector ? connectorLabels[build.connector] : "" },
  { label: "Lot", value: build.lot ?? "" },
  { label: "Roll", value: build.roll ?? "" },
  { label: "End of the roll", value: build.end ? rollEndLabels[build.end] : "" },
  { label: "Before it came", value: earlierUseOf(build) === "" ? "" : earlierUseLabels[earlierUseOf(build)] },
  {
    label: "Highest known",
    value: build.highestUsedCelsius === undefined ? "" : `${build.highestUsedCelsius} °C`,
  },
  { label: "Deepest known", value: mm(build.deepestUsedMillimetre) },
  { label: "Hours at heat", value: build.usedHours === undefined ? "" : `${build.usedHours} h` },
  { label: "Used in", value: build.usedIn ?? "" },
];
