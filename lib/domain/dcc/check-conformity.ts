import type { DccCertificate, DccColumn, DccQuantity, DccStatement } from "../calibration/dcc-certificate";
import { columnIn } from "./check-results";
import { demanded, type IssuedFinding } from "./issued-finding";

const limitOf = (statement: DccStatement, refType: string): DccColumn | undefined =>
  columnIn(
    statement.data.quantities.find(({ refTypes }) => refTypes.includes(refType)),
    "\\kelvin",
  );

/** Half of the last digit written: a printed error may lie on the other side of a limit by no more than its rounding. */
const slack = (written: string): number => {
  const decimals = written.split(".")[1]?.length ?? 0;
  return 0.5 * Number(`1e-${decimals}`) * (1 + 1e-9);
};

/** A limit, and by how much it and the error may have moved when they were rounded for print. */
type Limit = { readonly value: number; readonly slack: number };
type Limits = { readonly tolerance: Limit; readonly acceptance: Limit | null };

const within = (size: number, { value, slack: most }: Limit): boolean => size <= value + most;
const beyond = (size: number, { value, slack: most }: Limit): boolean => size >= value - most;

/**
 * Whether a printed error can bear the word, given the limits it was decided by. Without an acceptance limit, as on
 * contents that state none, only the tolerance can be held against it.
 */
const fits = (word: string, size: number, { tolerance, acceptance }: Limits): boolean => {
  if (word === "pass") return within(size, acceptance ?? tolerance);
  if (word === "conditionalPass")
    return (acceptance === null || beyond(size, acceptance)) && within(size, tolerance);
  return beyond(size, tolerance) || (acceptance !== null && beyond(size, acceptance));
};

const limitAt = (column: DccColumn | undefined, row: number, error: string): Limit | null => {
  const value = column?.numbers[row];
  return value === undefined || value === null
    ? null
    : { value, slack: slack(column?.written[row] ?? "") + slack(error) };
};

const words = (quantity: DccQuantity, statement: DccStatement): readonly IssuedFinding[] => {
  const errors = columnIn(quantity, "\\kelvin");
  const upper = limitOf(statement, "basic_toleranceLimitUpper");
  const accepted = limitOf(statement, "basic_acceptanceLimitUpper");
  if (!errors || !upper) return [];
  const contradicted = statement.conformity.findIndex((word, row) => {
    const [error, written] = [errors.numbers[row], errors.written[row] ?? ""];
    const tolerance = limitAt(upper, row, written);
    if (error === null || error === undefined || tolerance === null) return true;
    return !fits(word, Math.abs(error), { tolerance, acceptance: limitAt(accepted, row, written) });
  });
  return demanded(
    contradicted < 0,
    "7.8.6",
    `Row ${contradicted + 1} says ${statement.conformity[contradicted]}, and its error and limits say otherwise.`,
    statement.place,
  );
};

const mirrored = (statement: DccStatement): readonly IssuedFinding[] =>
  (["acceptance", "tolerance"] as const).flatMap((kind) => {
    const lower = limitOf(statement, `basic_${kind}LimitLower`)?.numbers ?? [];
    const upper = limitOf(statement, `basic_${kind}LimitUpper`)?.numbers ?? [];
    return demanded(
      upper.length === lower.length &&
        upper.every((value, row) => (value ?? Number.NaN) + (lower[row] ?? Number.NaN) === 0),
      "7.8.6",
      `The lower ${kind} limit is the upper one with the other sign, row for row.`,
      statement.place,
    );
  });

const said = (quantity: DccQuantity, statement: DccStatement): readonly IssuedFinding[] => {
  const rows = columnIn(quantity, "\\kelvin")?.numbers.length ?? 0;
  const limits = limitOf(statement, "basic_toleranceLimitUpper");
  return [
    ...demanded(
      statement.conformity.length === rows && limits?.numbers.length === rows,
      "7.8.6.2",
      "Each row has its own word of conformity and the limit it was held against.",
      statement.place,
    ),
    ...mirrored(statement),
    ...words(quantity, statement),
  ];
};

/** 7.8.6.2: results, specification and rule stand together wherever pass or fail is said; the words fit the figures. */
export const checkConformity = (certificate: DccCertificate): readonly IssuedFinding[] => {
  const quantities = certificate.results.flatMap(({ data }) =>
    data.tables.flatMap((table) => table.quantities),
  );
  const spoken = quantities.flatMap((quantity) =>
    quantity.remarks
      .filter(({ conformity }) => conformity.length > 0)
      .map((statement) => ({ quantity, statement })),
  );
  if (spoken.length === 0) return [];
  const rule = certificate.statements.find(
    ({ refTypes, references }) => refTypes.includes("basic_conformity") && references.includes("7.8.6"),
  );
  return [
    ...demanded(
      rule !== undefined && rule.norms.length > 0 && rule.declaration.length >= 3,
      "7.8.6.2",
      "Pass or fail is said, and specification, rule and risk are not all stated.",
      rule?.place,
    ),
    ...spoken.flatMap(({ quantity, statement }) => said(quantity, statement)),
  ];
};
