import { z } from "zod";
import {
  connectorLabels,
  leadInsulationLabels,
  rollEndLabels,
  sheathFormLabels,
  sheathMaterialLabels,
  wireInsulationLabels,
} from "../sensor/build";
import { BuildDraft, earlierUseLabels } from "../sensor/build-draft";
import { conditionLabels, groundingLabels, polarityLabels, typeCheckLabels } from "../sensor/labels";
import { SensorChecks } from "../sensor/schema";

/** What one row of a list says of its sensor: the checks and the build of the form, and which line it belongs to. */
export const ListRow = z.object({ ...BuildDraft.shape, ...SensorChecks.shape });
export type ListField = keyof typeof ListRow.shape | "serial" | "line" | "typeLetter";

export type ListColumn = {
  readonly field: ListField;
  /** The first is the one of the template. */
  readonly names: readonly string[];
  /** Words a cell may hold, and what they mean; none = a text or a number. */
  readonly words?: Readonly<Record<string, string>>;
};

const wordsOf = (labels: Readonly<Record<string, string>>, also: Readonly<Record<string, string>> = {}) => ({
  ...Object.fromEntries(Object.entries(labels).map(([word, label]) => [label.toLowerCase(), word])),
  ...Object.fromEntries(Object.keys(labels).map((word) => [word, word])),
  ...also,
});

/** Every column a list may have. A name is compared without case, blanks, brackets and what stands between words. */
export const listColumns: readonly ListColumn[] = [
  { field: "serial", names: ["serial", "serial number", "serial no", "s/n"] },
  { field: "line", names: ["order line", "line", "position"] },
  { field: "typeLetter", names: ["type", "thermocouple type"] },
  { field: "loopResistanceOhm", names: ["loop resistance ohm", "loop ohm", "loop resistance", "loop Ω"] },
  {
    field: "insulationMegaohm",
    names: ["insulation megaohm", "insulation resistance megaohm", "insulation MΩ"],
  },
  { field: "polarity", names: ["polarity"], words: wordsOf(polarityLabels, { reverse: "reversed" }) },
  {
    field: "typeCheck",
    names: ["type check"],
    words: wordsOf(typeCheckLabels, { other: "other-type" }),
  },
  { field: "grounding", names: ["junction", "grounding", "grounded"], words: wordsOf(groundingLabels) },
  {
    field: "condition",
    names: ["condition"],
    words: wordsOf(conditionLabels, { ok: "as-described", good: "as-described", damaged: "deviates" }),
  },
  { field: "conditionNote", names: ["note", "condition note", "what deviates"] },
  { field: "lot", names: ["lot", "heat", "batch"] },
  { field: "roll", names: ["roll", "coil"] },
  {
    field: "end",
    names: ["end", "roll end"],
    words: wordsOf(rollEndLabels, { "1": "first", "2": "second" }),
  },
  { field: "sheath", names: ["sheath"], words: wordsOf(sheathFormLabels) },
  { field: "sheathMillimetre", names: ["sheath diameter mm", "sheath mm", "outer diameter mm"] },
  { field: "sheathMaterial", names: ["sheath material"], words: wordsOf(sheathMaterialLabels) },
  { field: "wireMillimetre", names: ["wire diameter mm", "wire mm", "wire size mm"] },
  { field: "wireInsulation", names: ["wire insulation"], words: wordsOf(wireInsulationLabels) },
  { field: "lengthMillimetre", names: ["length mm", "sensor length mm"] },
  { field: "leadInsulation", names: ["lead insulation", "lead"], words: wordsOf(leadInsulationLabels) },
  { field: "leadMillimetre", names: ["lead length mm", "lead mm"] },
  { field: "connector", names: ["connector", "plug"], words: wordsOf(connectorLabels) },
  {
    field: "use",
    names: ["used before", "history"],
    words: wordsOf(earlierUseLabels, { yes: "used", no: "new" }),
  },
  { field: "highestUsedCelsius", names: ["highest used celsius", "used up to celsius", "highest used °C"] },
  { field: "deepestUsedMillimetre", names: ["deepest used mm"] },
  { field: "usedHours", names: ["used hours", "hours"] },
  { field: "usedIn", names: ["used in", "atmosphere"] },
];

/** "Loop resistance (Ω)" and "loop_resistance_ohm" are one name. */
export const plainName = (name: string): string =>
  name
    .normalize("NFKC")
    .toLowerCase()
    .replaceAll("mω", "megaohm")
    .replaceAll("ω", "ohm")
    .replaceAll("°c", "celsius")
    .replace(/[^\p{L}\p{N}]+/gu, "");

const byName: ReadonlyMap<string, ListColumn> = new Map(
  listColumns.flatMap((column) => column.names.map((name) => [plainName(name), column])),
);

export const columnNamed = (name: string): ListColumn | undefined => byName.get(plainName(name));

/** A word as a person may write it in a cell → the platform's own, or undefined. */
export const wordIn = (column: ListColumn, typed: string): string | undefined => {
  const words = column.words ?? {};
  const plain = typed.toLowerCase();
  return Object.hasOwn(words, plain) ? words[plain] : undefined;
};

/** The words of a column as a remedy names them. */
export const wordsToWrite = (column: ListColumn): string =>
  [...new Set(Object.values(column.words ?? {}))].filter((word) => word !== "").join(", ");
