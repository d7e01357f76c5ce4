import type { DccProposal, Proposed } from "@/lib/domain/calibration/dcc-proposal";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions, type ThermocoupleType } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import { halfLastDigit } from "./decimal-text";
import { overallOf, uncertaintyAt } from "./offer-uncertainty";
import { type Figures, figuresFor, type TableRows } from "./table-columns";

type Reference = Extract<DccProposal, { readonly kind: "reference" }>;
type Row = Reference["rows"][number];
type Source = {
  readonly statedAs: Reference["statedAs"];
  readonly figures: Figures;
  readonly deviation: (celsius: Proposed, given: Proposed) => Proposed | null;
};

/** Computed values are kept to a nanovolt: far below any U, and without the noise of the subtraction. */
const toNanovolt = (microvolt: number): number => Number(microvolt.toFixed(3));

const minus = (figures: Figures): ((celsius: Proposed, given: Proposed) => Proposed) =>
  figures.role === "correction"
    ? (_, given) => ({
        ...given,
        value: -given.value,
        how: [given.how, "sign changed: the file gives the correction"]
          .filter((part) => part !== "")
          .join("; "),
      })
    : (_, given) => given;

const fromEmf =
  (type: ThermocoupleType) =>
  (celsius: Proposed, given: Proposed): Proposed | null => {
    const table = emf(referenceFunctions[type], celsius.value);
    if (!table.ok) return null;
    return {
      ...given,
      value: toNanovolt(given.value - table.value),
      how: `${given.how === "" ? "" : `${given.how}; `}minus ${table.value.toFixed(2)} µV of type ${type} at ${celsius.value} °C`,
    };
  };

const fromKelvin =
  (type: ThermocoupleType, isCorrection: boolean) =>
  (celsius: Proposed, given: Proposed): Proposed | null => {
    const slope = seebeck(referenceFunctions[type], celsius.value);
    if (!slope.ok) return null;
    const sign = isCorrection ? -1 : 1;
    return {
      ...given,
      value: toNanovolt(sign * given.value * slope.value),
      how: `${isCorrection ? "sign changed, " : ""}× ${slope.value.toFixed(3)} µV/°C of type ${type} at ${celsius.value} °C`,
    };
  };

const sourceOf = (table: TableRows, type: ThermocoupleType | null): Source | null => {
  const volt = figuresFor(table, "error", "microvolt") ?? figuresFor(table, "correction", "microvolt");
  if (volt) return { statedAs: "volt", figures: volt, deviation: minus(volt) };
  if (!type) return null;
  const measured = figuresFor(table, "indication", "microvolt");
  if (measured) return { statedAs: "emf", figures: measured, deviation: fromEmf(type) };
  const kelvin = figuresFor(table, "error", "celsius") ?? figuresFor(table, "correction", "celsius");
  return (
    kelvin && {
      statedAs: "kelvin",
      figures: kelvin,
      deviation: fromKelvin(type, kelvin.role === "correction"),
    }
  );
};

const said: Readonly<Record<Reference["statedAs"], string>> = {
  volt: "The certificate states the deviation of the emf; it was taken as it stands.",
  emf: "The certificate states the emf: the deviation was computed from it and the reference function.",
  kelvin:
    "The certificate states the error in kelvin, not in µV: it was multiplied by the Seebeck coefficient of the type at each temperature. Compare with its text before you confirm.",
};

/** Where the file gives the deviation twice, in two ways, the two must tell the same. */
const contradictions = (
  rows: readonly Row[],
  table: TableRows,
  type: ThermocoupleType | null,
  source: Source,
): string[] => {
  const measured = figuresFor(table, "indication", "microvolt");
  const kelvin = figuresFor(table, "error", "celsius");
  const other =
    source.statedAs === "volt" && measured && type
      ? { figures: measured, deviation: fromEmf(type) }
      : source.statedAs === "emf" && kelvin && type
        ? { figures: kelvin, deviation: fromKelvin(type, false) }
        : null;
  if (!other) return [];
  const remarks =
    source.statedAs === "emf"
      ? ["It also states the error in kelvin; the emf was taken, which needs no slope."]
      : [];
  for (const row of rows) {
    const at =
      table.figures
        .find(({ kind, role }) => kind === "celsius" && role === "reference")
        ?.rows.findIndex((cell) => cell?.value === row.celsius.value) ?? -1;
    const given = other.figures.rows[at];
    const computed = given ? other.deviation(row.celsius, given) : null;
    const scale = given && computed && given.value !== 0 ? Math.abs(computed.value / given.value) : 1;
    // Both are rounded as printed; a kelvin is up to 80 µV.
    const slack =
      source.statedAs === "emf" ? 80 * halfLastDigit(given?.written.split(" ")[0] ?? "") + scale * 0.01 : 1;
    if (computed && Math.abs(computed.value - row.deviationMicrovolt.value) > slack)
      remarks.push(
        `At ${row.celsius.value} °C the file says ${row.deviationMicrovolt.value} µV here and ${computed.value} µV by its other column (${other.figures.name}): ask the issuer which one holds.`,
      );
  }
  return remarks;
};

const byTemperature = (one: Row, other: Row): number => one.celsius.value - other.celsius.value;

const orderRemarks = (rows: readonly Row[]): string[] => {
  const sorted = [...rows].sort(byTemperature);
  const remarks = rows.every((row, index) => row === sorted[index])
    ? []
    : ["The rows were sorted from cold to hot."];
  const twice = sorted.find((row, index) => row.celsius.value === sorted[index - 1]?.celsius.value);
  return twice
    ? [...remarks, `${twice.celsius.value} °C stands in more than one row: choose the one that holds.`]
    : remarks;
};

/** Temperature, deviation in µV and U of a thermocouple, or null where the table has no such columns. */
export const offerReference = (table: TableRows, type: ThermocoupleType | null): Reference | null => {
  const temperature = figuresFor(table, "reference", "celsius");
  const source = sourceOf(table, type);
  if (!temperature || !source) return null;
  const rows: Row[] = [];
  const remarks = [said[source.statedAs]];
  for (let at = 0; at < table.count; at += 1) {
    const [celsius, given] = [temperature.rows[at], source.figures.rows[at]];
    const deviationMicrovolt = celsius && given ? source.deviation(celsius, given) : null;
    if (celsius && deviationMicrovolt)
      rows.push({ celsius, deviationMicrovolt, uncertainty: uncertaintyAt(source.figures, at) });
    else
      remarks.push(
        `Row ${at + 1} was left out: ${celsius && given ? `${celsius.value} °C lies outside the reference function of type ${type}` : "it has no value"}.`,
      );
  }
  if (rows.length === 0) return null;
  const { overall, remarks: uncertain } = overallOf(rows);
  const guessed = [temperature, source.figures]
    .filter(({ isByName }) => isByName)
    .map(({ name }) => `What "${name}" is was told by its name alone: no refType says it.`);
  return {
    kind: "reference",
    statedAs: source.statedAs,
    title: table.title,
    place: table.place,
    rows: [...rows].sort(byTemperature),
    overall,
    remarks: [
      ...remarks,
      ...guessed,
      ...orderRemarks(rows),
      ...uncertain,
      ...contradictions(rows, table, type, source),
    ],
  };
};
