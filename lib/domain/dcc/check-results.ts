import type { DccCertificate, DccColumn, DccQuantity, DccTable } from "../calibration/dcc-certificate";
import { demanded, type IssuedFinding } from "./issued-finding";
import { own } from "./terms";

export const quantityOf = (table: DccTable, refType: string): DccQuantity | undefined =>
  table.quantities.find(({ refTypes }) => refTypes.includes(refType));

export const columnIn = (quantity: DccQuantity | undefined, unit: string): DccColumn | undefined =>
  quantity?.columns.find(({ units }) => units.every((one) => one === unit));

/** Every value with its own U, k and p (7.8.4.1 a). */
const covered = (column: DccColumn, table: DccTable): readonly IssuedFinding[] => {
  const { uncertainty, numbers } = column;
  const isWhole =
    uncertainty?.kind === "expanded" &&
    [uncertainty.numbers, uncertainty.coverageFactor, uncertainty.coverageProbability].every(
      (list) => list.length === numbers.length && list.every((value) => value !== null && value > 0),
    );
  return demanded(
    isWhole,
    "7.8.4.1 a",
    "Each value needs its own expanded uncertainty above zero, with k and coverage probability.",
    uncertainty?.place ?? table.place,
  );
};

const wanted = [
  ["basic_calibrationValue", "\\degreecelsius", "setpoint"],
  ["basic_referenceValue", "\\kelvin", "reference temperature"],
  [own("emf"), "\\volt", "emf"],
  [own("emfDeviation"), "\\volt", "deviation"],
  ["basic_measurementError", "\\kelvin", "error"],
  [own("correction"), "\\kelvin", "correction"],
] as const;

const withUncertainty: readonly string[] = [
  own("emf"),
  own("emfDeviation"),
  "basic_measurementError",
  own("correction"),
];

const opposite = (table: DccTable): readonly IssuedFinding[] => {
  const errors = columnIn(quantityOf(table, "basic_measurementError"), "\\kelvin");
  const corrections = columnIn(quantityOf(table, own("correction")), "\\kelvin");
  if (!errors || !corrections) return [];
  return demanded(
    errors.numbers.every((error, row) => (error ?? 0) + (corrections.numbers[row] ?? Number.NaN) === 0),
    "7.8.2.1 m",
    "The correction is the error with the other sign, row for row.",
    corrections.place,
  );
};

/** Sizes that belong together: a deviation of the emf no larger than the emf's own scale tells of a slipped unit. */
const mostVolt = 0.1;
const plausible = (table: DccTable): readonly IssuedFinding[] => {
  const emf = columnIn(quantityOf(table, own("emf")), "\\volt");
  return emf
    ? demanded(
        emf.numbers.every((value) => value !== null && Math.abs(value) < mostVolt),
        "7.8.2.1 m",
        "No thermocouple gives 0.1 V: the unit is volt.",
        emf.place,
      )
    : [];
};

const checkTable = (table: DccTable): readonly IssuedFinding[] => {
  const rows = Math.max(
    0,
    ...table.quantities.flatMap(({ columns }) => columns.map((one) => one.numbers.length)),
  );
  return [
    ...wanted.flatMap(([refType, unit, what]) => {
      const column = columnIn(quantityOf(table, refType), unit);
      return [
        ...demanded(
          column !== undefined &&
            column.numbers.length === rows &&
            column.numbers.every((one) => one !== null),
          "7.8.2.1 m",
          `The table needs the ${what} of each of its ${rows} rows, in ${unit}.`,
          column?.place ?? table.place,
        ),
        ...(column && withUncertainty.includes(refType) ? covered(column, table) : []),
      ];
    }),
    ...opposite(table),
    ...plausible(table),
  ];
};

export const resultTables = ({ results }: DccCertificate): readonly DccTable[] =>
  results
    .filter(({ refTypes }) => refTypes.includes("gp_measuringResult1"))
    .flatMap(({ data }) => data.tables.filter(({ refTypes }) => refTypes.includes("gp_table1")));

/** 7.8.2.1 m: each table of results is whole, each of its values bears U, k and p. */
export const checkResults = (certificate: DccCertificate): readonly IssuedFinding[] => [
  ...demanded(resultTables(certificate).length > 0, "7.8.2.1 m", "The certificate has no table of results."),
  ...resultTables(certificate).flatMap(checkTable),
];
