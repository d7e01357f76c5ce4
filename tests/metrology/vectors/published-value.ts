/** Where a published value comes from. Only what was read counts; what a person remembers is listed, and marked. */
export type PublishedSource = {
  readonly document: string;
  /** Where it was read: a public address, or a public repository and the path in it. */
  readonly readAt: string;
  readonly provenance: "read" | "from-memory";
};

export type PublishedValue = {
  /** One document or one worked example; no family may carry the whole inventory. */
  readonly family: string;
  readonly name: string;
  /** Clause, table, row. */
  readonly place: string;
  /** Digits as printed there, in the unit that `name` or `place` gives. */
  readonly printed: string;
  readonly source: PublishedSource;
  /** Half of the last printed digit, unless the document rounds on the way: then this, with the reason. */
  readonly tolerance?: { readonly absolute: number; readonly reason: string };
};

type Row = readonly [place: string, printed: string, tolerance?: PublishedValue["tolerance"]];

/** The values of one worked example, by name. */
export function publishedValues<Name extends string>(
  family: string,
  source: PublishedSource,
  rows: Readonly<Record<Name, Row>>,
): Readonly<Record<Name, PublishedValue>> {
  const entries = Object.entries<Row>(rows).map(([name, row]) => [
    name,
    publishedValue(family, source, name, row),
  ]);
  return Object.fromEntries(entries) as Record<Name, PublishedValue>;
}

/** The cells of one published table, each with what leads to it. */
export function publishedTable<Input>(
  family: string,
  source: PublishedSource,
  cells: readonly (readonly [input: Input, ...row: Row])[],
): readonly (PublishedValue & { readonly input: Input })[] {
  return cells.map(([input, ...row]) => ({ ...publishedValue(family, source, row[0], row), input }));
}

function publishedValue(
  family: string,
  source: PublishedSource,
  name: string,
  [place, printed, tolerance]: Row,
): PublishedValue {
  const value = { family, name, place, printed, source };
  return tolerance ? { ...value, tolerance } : value;
}

/** Half of the last digit of a number as printed, "0.0041" or "0.429E-03". */
export function halfLastDigit(printed: string): number {
  const [mantissa = "", exponent = "0"] = printed.split(/e/i);
  const decimals = mantissa.split(".")[1]?.length ?? 0;
  return 0.5 * Number(`1e${Number(exponent) - decimals}`);
}

export function toleranceOf(value: PublishedValue): number {
  return value.tolerance?.absolute ?? halfLastDigit(value.printed);
}
