import type { DccProposal, Proposed } from "@/lib/domain/calibration/dcc-proposal";
import { overallOf, uncertaintyAt } from "./offer-uncertainty";
import { type Figures, figuresFor, type Kind, type TableRows } from "./table-columns";

type Reading = {
  readonly reference: Proposed;
  readonly indication: Proposed;
  readonly error: Proposed;
  readonly row: number;
};

/** Sums of two printed figures; more digits than either has would be noise. */
const tidy = (value: number): number => Number(value.toPrecision(12));

const negated = (correction: Proposed): Proposed => ({
  ...correction,
  value: -correction.value,
  how: "sign changed: the file gives the correction",
});

/** Two of reference, indication and error give the third. */
const readingAt = (
  row: number,
  reference: Figures,
  indication: Figures | null,
  error: Figures | null,
): Reading | null => {
  const [of, shown, off] = [reference.rows[row], indication?.rows[row], error?.rows[row]];
  if (!of) return null;
  const given = off && error?.role === "correction" ? negated(off) : off;
  if (given) {
    const computed: Proposed = {
      value: tidy(of.value + given.value),
      written: `${of.written} + ${given.written}`,
      how: "reference + error",
      from: of.from,
    };
    return { reference: of, indication: shown ?? computed, error: given, row };
  }
  if (!shown) return null;
  return {
    reference: of,
    indication: shown,
    error: {
      value: tidy(shown.value - of.value),
      written: `${shown.written} − ${of.written}`,
      how: "indication − reference",
      from: shown.from,
    },
    row,
  };
};

type Read = {
  readonly readings: readonly Reading[];
  readonly bearer: Figures;
  readonly remarks: readonly string[];
};

const readingsOf = (table: TableRows, kind: Kind): Read | null => {
  const reference = figuresFor(table, "reference", kind);
  const indication = figuresFor(table, "indication", kind);
  const error = figuresFor(table, "error", kind) ?? figuresFor(table, "correction", kind);
  const bearer = error ?? indication;
  if (!reference || !bearer) return null;
  const readings = Array.from({ length: table.count }, (_, row) =>
    readingAt(row, reference, indication, error),
  ).flatMap((reading) => reading ?? []);
  if (readings.length === 0) return null;
  const left = table.count - readings.length;
  const byName = [reference, bearer]
    .filter(({ isByName }) => isByName)
    .map(({ name }) => `What "${name}" is was told by its name alone: no refType says it.`);
  return {
    readings,
    bearer,
    remarks: [...(left > 0 ? [`${left} rows without a value were left out.`] : []), ...byName],
  };
};

/** A voltmeter's corrections: to be added to its indication, so the error with its sign changed. */
export const offerVoltmeter = (table: TableRows): DccProposal | null => {
  const read = readingsOf(table, "microvolt");
  if (!read || table.figures.some(({ kind }) => kind === "celsius")) return null;
  const rows = read.readings.map(({ indication, error, row }) => ({
    microvolt: indication,
    correctionMicrovolt: {
      ...error,
      value: error.value === 0 ? 0 : -error.value,
      how: [error.how, "sign changed: correction = −error"].filter((part) => part !== "").join("; "),
    },
    uncertainty: uncertaintyAt(read.bearer, row),
  }));
  const { overall, remarks } = overallOf(rows);
  return {
    kind: "voltmeter",
    title: table.title,
    place: table.place,
    rows,
    overall,
    remarks: [...read.remarks, ...remarks],
  };
};

/** A thermometer that shows temperature: its error at each reference temperature. */
export const offerThermometer = (table: TableRows): DccProposal | null => {
  const read = readingsOf(table, "celsius");
  if (!read) return null;
  const rows = read.readings.map(({ reference, error, row }) => ({
    celsius: reference,
    errorCelsius: error,
    uncertainty: uncertaintyAt(read.bearer, row),
  }));
  const { overall, remarks } = overallOf(rows);
  return {
    kind: "thermometer",
    title: table.title,
    place: table.place,
    rows,
    overall,
    remarks: [...read.remarks, ...remarks],
  };
};
