/** Why a readings file is refused: where, what, and the remedy in the same message. Line 1 is the first of the file. */
export type ReadingsProblem = {
  readonly line: number | null;
  /** The column by its name, or its number where it has none. */
  readonly column: string | null;
  readonly message: string;
};

/** As one sentence for the person at the screen. */
export const describeProblem = (problem: ReadingsProblem): string => {
  const place = [
    problem.line === null ? null : `line ${problem.line}`,
    problem.column === null ? null : `column ${problem.column}`,
  ].filter((part) => part !== null);
  if (place.length === 0) return problem.message;
  const text = place.join(", ");
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}: ${problem.message}`;
};
