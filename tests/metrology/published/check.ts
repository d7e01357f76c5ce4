import type { PublishedValue } from "../vectors/published-value";

/** A published value and what the engine gives for it. The inventory runs these, and counts what it runs. */
export type Check = { readonly vector: PublishedValue; readonly actual: () => number };

/** One way to compute for every value of an example: the compiler refuses a value without one. */
export function checks<Name extends string>(
  vectors: Readonly<Record<Name, PublishedValue>>,
  actuals: Readonly<Record<Name, () => number>>,
): readonly Check[] {
  return Object.entries<PublishedValue>(vectors).map(([name, vector]) => ({
    vector,
    actual: actuals[name as Name],
  }));
}

/** One way to compute for all cells of a table. */
export function tableChecks<Input>(
  cells: readonly (PublishedValue & { readonly input: Input })[],
  actual: (input: Input) => number,
): readonly Check[] {
  return cells.map((cell) => ({ vector: cell, actual: () => actual(cell.input) }));
}
