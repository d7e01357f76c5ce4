import type { DifferenceCell } from "./difference-cell";
import { resultKey } from "./result-name";

export type SwappedPair = {
  readonly first: string;
  readonly second: string;
  /** Mean square of the differences over their U: as they are, and with the two exchanged. */
  readonly asTheyAre: number;
  readonly exchanged: number;
  /** Other sensors that could be in the place of one of the two. */
  readonly orElse: readonly string[];
};

/** Coverage factor with which "beyond U" is said of a difference. */
const coverage = 2;
/** As they are, the two deviate by about U or more on the whole; exchanged, by less than half of that, and inside U. */
const leastAsTheyAre = 0.8;
const mostExchanged = 0.6;
const mostOfAsTheyAre = 0.25;

type Own = ReadonlyMap<string, DifferenceCell>;

/** Mean square of (now − earlier) / U, the earlier results of `from` beside the results of `of`. */
const squares = (
  of: Own,
  from: Own,
  residual: (cell: DifferenceCell) => number,
): { readonly sum: number; readonly count: number } => {
  let sum = 0;
  let count = 0;
  for (const [setpoint, cell] of of) {
    const other = from.get(setpoint);
    if (!other) continue;
    // The residual is now − earlier without what all have in common; another's earlier result moves it by their difference.
    const moved = residual(cell) + cell.earlierCelsius - other.earlierCelsius;
    sum += (moved / (coverage * cell.standardCelsius)) ** 2;
    count += 1;
  }
  return { sum, count };
};

/**
 * Two sensors of one type whose results lie far from their own last ones and near each other's: their places, channels or
 * labels were exchanged. The clearest first; a pair that shares a sensor with a clearer one is told with that one.
 */
export const swappedPairs = (
  cells: readonly DifferenceCell[],
  /** By `resultKey`: what is left of a difference without the shifts that others share. */
  residuals: ReadonlyMap<string, number>,
): readonly SwappedPair[] => {
  const residual = (cell: DifferenceCell) => residuals.get(resultKey(cell)) ?? cell.celsius;
  const own = new Map<string, Map<string, DifferenceCell>>();
  for (const cell of cells) {
    const known = own.get(cell.sensor) ?? new Map<string, DifferenceCell>();
    own.set(cell.sensor, known.set(cell.setpoint, cell));
  }
  const typeOf = new Map(cells.map(({ sensor, type }) => [sensor, type]));
  const sensors = [...own.entries()];
  const found: Omit<SwappedPair, "orElse">[] = [];
  for (const [at, [first, ofFirst]] of sensors.entries())
    for (const [second, ofSecond] of sensors.slice(at + 1)) {
      if (typeOf.get(first) !== typeOf.get(second)) continue;
      const pair = compare(ofFirst, ofSecond, residual);
      if (
        pair &&
        pair.asTheyAre > leastAsTheyAre &&
        pair.exchanged < mostExchanged &&
        pair.exchanged < mostOfAsTheyAre * pair.asTheyAre
      )
        found.push({ first, second, ...pair });
    }
  return together(
    found.sort((left, right) => right.asTheyAre - right.exchanged - (left.asTheyAre - left.exchanged)),
  );
};

const together = (sorted: readonly Omit<SwappedPair, "orElse">[]): readonly SwappedPair[] => {
  const kept: (Omit<SwappedPair, "orElse"> & { readonly orElse: string[] })[] = [];
  for (const pair of sorted) {
    const names = [pair.first, pair.second];
    const clearer = kept.find(({ first, second }) => names.includes(first) || names.includes(second));
    if (!clearer) kept.push({ ...pair, orElse: [] });
    else
      clearer.orElse.push(
        ...names.filter((name) => ![clearer.first, clearer.second, ...clearer.orElse].includes(name)),
      );
  }
  return kept;
};

const compare = (first: Own, second: Own, residual: (cell: DifferenceCell) => number) => {
  const stay = [squares(first, first, residual), squares(second, second, residual)];
  const change = [squares(first, second, residual), squares(second, first, residual)];
  const mean = (parts: typeof stay) => {
    const count = parts.reduce((sum, part) => sum + part.count, 0);
    return count === 0 ? null : parts.reduce((sum, part) => sum + part.sum, 0) / count;
  };
  const asTheyAre = mean(stay);
  const exchanged = mean(change);
  return asTheyAre === null || exchanged === null ? null : { asTheyAre, exchanged };
};
