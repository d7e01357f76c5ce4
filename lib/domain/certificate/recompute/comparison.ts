/** One printed figure of a document beside the same figure computed again. */
export type Comparison = {
  /** "Results", "Correction table", "Lot" …, with the item where there are several. */
  readonly table: string;
  /** The row as the document names it: a setpoint, a temperature, a power. */
  readonly row: string;
  readonly column: string;
  readonly printed: string;
  /** Empty where nothing stands there when it is computed again. */
  readonly recomputed: string;
};

export const agrees = ({ printed, recomputed }: Comparison): boolean => printed === recomputed;

/** The figures of a row by the name of their column: what is printed, and what comes out again. */
export const compareFigures = (
  place: Pick<Comparison, "table" | "row">,
  printed: Readonly<Record<string, string>>,
  recomputed: Readonly<Record<string, string | undefined>>,
): readonly Comparison[] =>
  Object.entries(printed).map(([column, figure]) => ({
    ...place,
    column,
    printed: figure,
    recomputed: recomputed[column] ?? "",
  }));
