import type { DccColumn, DccPlace, DccQuantity, DccText } from "@/lib/domain/calibration/dcc-certificate";
import type { Proposed } from "@/lib/domain/calibration/dcc-proposal";
import { decimalNumber } from "./decimal-text";
import { siUnit } from "./si-unit";

export type Role = "reference" | "indication" | "error" | "correction";
export type Kind = "celsius" | "microvolt";

/** One quantity of a table, in the unit of our forms. */
export type Figures = {
  readonly role: Role;
  readonly kind: Kind;
  /** Null where the file says NaN. */
  readonly rows: readonly (Proposed | null)[];
  readonly column: DccColumn;
  readonly name: string;
  /** True when no refType told the role, so that the words of the name had to. */
  readonly isByName: boolean;
};

export type TableRows = {
  readonly title: string;
  readonly place: DccPlace;
  readonly count: number;
  readonly figures: readonly Figures[];
  readonly others: readonly DccQuantity[];
};

/** English where there is some, else the first language given. */
export const plainText = (text: DccText): string =>
  (text.find(({ lang }) => lang === "en") ?? text[0])?.text ?? "";

const byRefType: readonly (readonly [RegExp, Role])[] = [
  [/correction/i, "correction"],
  [/measurementError|deviation/i, "error"],
  [/referenceValue/i, "reference"],
  [/measuredValue/i, "indication"],
];
const byName: readonly (readonly [RegExp, Role])[] = [
  [/correction|korrektion|korrektur/i, "correction"],
  [/error|deviation|abweichung|difference/i, "error"],
  [/indicat|measured|emf|e\.m\.f|thermospannung|anzeige|angezeigt/i, "indication"],
  [/reference|bezug|temperature|temperatur/i, "reference"],
];

const roleOf = (quantity: DccQuantity): { readonly role: Role; readonly isByName: boolean } | null => {
  const refTypes = quantity.refTypes.join(" ");
  const told = byRefType.find(([words]) => words.test(refTypes));
  if (told) return { role: told[1], isByName: false };
  const name = quantity.name.map(({ text }) => text).join(" ");
  const meant = byName.find(([words]) => words.test(name));
  return meant ? { role: meant[1], isByName: true } : null;
};

const decimals = (written: string): number => (/\.(\d+)/.exec(written)?.[1] ?? "").length;

/** A temperature difference in kelvin is one in °C; a temperature is not, unless 273.15 is taken off. */
const converted = (
  written: string,
  unit: string,
  isDifference: boolean,
): { readonly kind: Kind; readonly value: number | null; readonly how: string } | null => {
  const parsed = siUnit(unit);
  if (!parsed.ok) return null;
  const { shift, dimension } = parsed.unit;
  if (dimension === "volt^1")
    return {
      kind: "microvolt",
      value: decimalNumber(written, shift + 6),
      how: shift === -6 ? "" : `× 10^${shift + 6}, to µV`,
    };
  const value = decimalNumber(written, shift);
  const scaled = shift === 0 ? "" : `× 10^${shift}`;
  if (dimension === "degreecelsius^1" || (dimension === "kelvin^1" && isDifference))
    return { kind: "celsius", value, how: scaled };
  if (dimension !== "kelvin^1") return null;
  const celsius =
    value === null ? null : Number((value - 273.15).toFixed(Math.max(2, decimals(written) - shift)));
  return { kind: "celsius", value: celsius, how: "− 273.15, kelvin to °C" };
};

const rank = ({ units }: DccColumn): number =>
  units[0] === "\\degreecelsius" ? 0 : siUnit(units[0] ?? "").ok ? 1 : 2;

/** Of a hybrid quantity the column in °C is taken, so that nothing needs converting. */
const columnOf = (quantity: DccQuantity): DccColumn | null =>
  [...quantity.columns].sort((one, other) => rank(one) - rank(other))[0] ?? null;

const figuresOf = (quantity: DccQuantity, count: number): Figures | null => {
  const told = roleOf(quantity);
  const column = columnOf(quantity);
  if (!told || !column) return null;
  const isDifference = told.role === "error" || told.role === "correction";
  const rows: (Proposed | null)[] = [];
  let kind: Kind | null = null;
  for (let row = 0; row < count; row += 1) {
    const at = column.written.length === 1 ? 0 : row;
    const [written, unit] = [column.written[at] ?? "", column.units[at] ?? ""];
    const figure = converted(written, unit, isDifference);
    if (!figure || (kind !== null && kind !== figure.kind)) return null;
    kind = figure.kind;
    rows.push(
      figure.value === null
        ? null
        : { value: figure.value, written: `${written} ${unit}`, how: figure.how, from: column.place },
    );
  }
  return kind && { ...told, kind, rows, column, name: plainText(quantity.name) };
};

/** The quantities of a table that can be laid beside a form; those that cannot stay in `others`. */
export const tableRows = (title: string, place: DccPlace, quantities: readonly DccQuantity[]): TableRows => {
  const count = Math.max(0, ...quantities.map(({ columns }) => columns[0]?.written.length ?? 0));
  const read = quantities.map((quantity) => ({ quantity, figures: figuresOf(quantity, count) }));
  return {
    title,
    place,
    count,
    figures: read.flatMap(({ figures }) => figures ?? []),
    others: read.filter(({ figures }) => figures === null).map(({ quantity }) => quantity),
  };
};

export const figuresFor = (table: TableRows, role: Role, kind: Kind): Figures | null =>
  table.figures.find((figures) => figures.role === role && figures.kind === kind) ?? null;
