import { about } from "./about";
import { type CommonShifts, commonShifts, type Shift } from "./common-shifts";
import { type DifferenceCell, differenceCell, type ReviewedResult } from "./difference-cell";
import { resultKey } from "./result-name";
import type { ReviewException } from "./review-exception";
import { type SwappedPair, swappedPairs } from "./swapped-pairs";

/** A shift this many times its standard deviation is said; the laboratory's habit, no source. */
export const leastScore = 2.5;
/** And no less than this part of the differences' own U: what is clear but small is no reason to look at forty results. */
export const leastPartOfU = 0.25;
/** Patterns stand above whatever is said of single results. */
const patternWeight = 100;
const mostForStrength = 20;

const celsius = (value: number): string => `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(2)} °C`;
const nominal = ({ nominalCelsius }: DifferenceCell): string => `${Number(nominalCelsius.toFixed(2))} °C`;
const strength = (score: number): number => Math.min(mostForStrength, score);

const isClear = (
  shift: Shift,
  cells: readonly DifferenceCell[],
  perShift: (cell: DifferenceCell) => number,
) =>
  shift.score >= leastScore &&
  cells.some((cell) => Math.abs(shift.celsius * perShift(cell)) >= leastPartOfU * 2 * cell.standardCelsius);

/** Shifts of everything, and at single setpoints, are one matter: one certificate speaks of them. */
const ofReferences = (
  { run, setpoints, junctions }: CommonShifts,
  cells: readonly DifferenceCell[],
): readonly ReviewException[] => {
  const clear = setpoints
    .map((shift) => ({ shift, own: cells.filter(({ setpoint }) => setpoint === shift.key) }))
    .filter(({ shift, own }) => isClear(shift, own, () => 1));
  const everywhere = run && isClear(run, cells, () => 1) ? run : null;
  const said = [
    ...(everywhere ? [`at every setpoint by ${celsius(everywhere.celsius)}`] : []),
    ...clear.map(
      ({ shift, own }) =>
        `at ${nominal(own[0] as DifferenceCell)} by ${celsius(shift.celsius)} beside the others`,
    ),
  ];
  if (said.length === 0) return [];
  const strongest = Math.max(everywhere?.score ?? 0, ...clear.map(({ shift }) => shift.score));
  const orJunction = junctions.length === 0 ? ", or the reference junction" : "";
  return [
    {
      weight: patternWeight + strength(strongest),
      kind: "reference-shift",
      subject: "References",
      text: `all sensors shifted alike against their last calibrations, ${said.join(", and ")}: a reference's certificate, or its values as entered, may be wrong${orJunction}`,
      ...about(everywhere ? cells : clear.flatMap(({ own }) => own)),
    },
  ];
};

const ofJunctions = (
  shifts: readonly Shift[],
  cells: readonly DifferenceCell[],
): readonly ReviewException[] =>
  shifts.flatMap((shift) => {
    const own = cells.filter(({ junction }) => junction === shift.key);
    if (!isClear(shift, own, ({ perJunctionCelsius }) => perJunctionCelsius)) return [];
    return [
      {
        weight: patternWeight + strength(shift.score),
        kind: "junction-shift" as const,
        subject: `Reference junction ${shift.key}`,
        text: `its ${shift.sensors} sensors shifted alike in emf against their last calibrations, as by a junction wrong by ${celsius(shift.celsius)}`,
        ...about(own),
      },
    ];
  });

const ofSwaps = (
  pairs: readonly SwappedPair[],
  cells: readonly DifferenceCell[],
): readonly ReviewException[] =>
  pairs.map(({ first, second, asTheyAre, exchanged, orElse }) => {
    const others = orElse.length > 0 ? `; ${orElse.join(", ")} could be one of them` : "";
    return {
      weight: patternWeight + strength(10 * asTheyAre),
      kind: "swap",
      subject: `${first} and ${second}`,
      text: `look swapped: each gives the other's last results (differences ${Math.sqrt(asTheyAre).toFixed(1)} U as they are, ${Math.sqrt(exchanged).toFixed(1)} U exchanged)${others}`,
      ...about(cells.filter(({ sensor }) => [first, second, ...orElse].includes(sensor))),
    };
  });

/** What is left of each difference without what others share. */
export const residualsOf = (
  cells: readonly DifferenceCell[],
  { run, setpoints, junctions }: CommonShifts,
  counts: (shift: Shift) => boolean,
): ReadonlyMap<string, number> => {
  const everywhere = run && counts(run) ? run.celsius : 0;
  const at = new Map(setpoints.filter(counts).map((shift) => [shift.key, shift.celsius]));
  const of = new Map(junctions.filter(counts).map((shift) => [shift.key, shift.celsius]));
  return new Map(
    cells.map((cell) => [
      resultKey(cell),
      cell.celsius -
        everywhere -
        (at.get(cell.setpoint) ?? 0) -
        cell.perJunctionCelsius * (of.get(cell.junction) ?? 0),
    ]),
  );
};

/** Beyond U, and not by what is said of many already. */
const ofSingles = (
  cells: readonly DifferenceCell[],
  residuals: ReadonlyMap<string, number>,
  swapped: ReadonlySet<string>,
): readonly ReviewException[] =>
  cells.flatMap((cell) => {
    const ratio = Math.abs(residuals.get(resultKey(cell)) ?? 0) / (2 * cell.standardCelsius);
    if (ratio <= 1 || swapped.has(cell.sensor)) return [];
    return [
      {
        weight: 55 + 10 * Math.min(ratio, 3),
        kind: "earlier" as const,
        subject: `${cell.sensor} at ${nominal(cell)}`,
        text: `differs from its last calibration by ${celsius(cell.celsius)}, ${ratio.toFixed(1)} times the U of the difference`,
        ...about([cell]),
      },
    ];
  });

/** What the differences to the last calibrations say together, then one by one; strongest first within each. */
export const deviationPatterns = (results: readonly ReviewedResult[]): readonly ReviewException[] => {
  const cells = results.flatMap((result) => differenceCell(result) ?? []);
  const shifts = commonShifts(cells);
  const pairs = swappedPairs(
    cells,
    residualsOf(cells, shifts, () => true),
  );
  const swapped = new Set(pairs.flatMap(({ first, second, orElse }) => [first, second, ...orElse]));
  const left = residualsOf(cells, shifts, ({ score }) => score >= leastScore);
  return [
    ...ofSwaps(pairs, cells),
    ...ofReferences(shifts, cells),
    ...ofJunctions(shifts.junctions, cells),
    ...ofSingles(cells, left, swapped),
  ];
};
