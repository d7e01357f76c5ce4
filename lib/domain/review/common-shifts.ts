import type { DifferenceCell } from "./difference-cell";
import { median, medianError, robustSpread, weightedMedian } from "./median";

/**
 * What sensors have in common of their differences to their last results. A difference is taken apart as
 *
 *   d(sensor, setpoint) = r + c(setpoint) + a(sensor, setpoint) · j(junction) + what is the sensor's own,
 *
 * by medians, alternately (as Tukey polishes a table), so that a few wrong sensors move nothing. A wrong certificate of a
 * reference is an r or, at one of its points, a c; a drifted reference junction is a j.
 */

export type Shift = {
  readonly key: string;
  /** °C: of the results at the setpoint, or of the junction. */
  readonly celsius: number;
  /** Over its standard deviation: scatter of the sensors, and what the budgets grant to references and junction. */
  readonly score: number;
  readonly sensors: number;
};

export type CommonShifts = {
  /** Of all results; null where nothing stands beside anything. */
  readonly run: Shift | null;
  readonly setpoints: readonly Shift[];
  readonly junctions: readonly Shift[];
};

const rounds = 12;
/** Fewer setpoints have no middle that one of them could lie away from. */
const fewestSetpoints = 3;
/** Fewer sensors tell nothing in common. */
const fewestSensors = 3;
/** Part of the budgeted scatter that is granted even where the sensors happen to agree better. */
const leastOfBudget = 0.5;
/** Part of the variance of a certificate that is granted to its points one by one. The laboratory's habit, no source. */
const differsByPoint = 0.25;
/** Types whose slope near 0 °C is next to nothing (B) say nothing of their junction. */
const leastLeverage = 0.05;

const grouped = (
  cells: readonly DifferenceCell[],
  keyOf: (cell: DifferenceCell) => string,
): ReadonlyMap<string, readonly DifferenceCell[]> => {
  const groups = new Map<string, DifferenceCell[]>();
  for (const cell of cells) groups.set(keyOf(cell), [...(groups.get(keyOf(cell)) ?? []), cell]);
  return groups;
};

const weightOf = ({ standardCelsius }: DifferenceCell): number => 1 / standardCelsius ** 2;

type Fit = { readonly setpoint: Map<string, number>; readonly junction: Map<string, number> };
type Groups = ReadonlyMap<string, readonly DifferenceCell[]>;

const polish = (bySetpoint: Groups, byJunction: Groups): Fit => {
  const setpoint = new Map<string, number>();
  const junction = new Map<string, number>();
  for (let round = 0; round < rounds; round += 1) {
    for (const [key, cells] of bySetpoint)
      setpoint.set(
        key,
        weightedMedian(
          cells.map((cell) => ({
            value: cell.celsius - cell.perJunctionCelsius * (junction.get(cell.junction) ?? 0),
            weight: weightOf(cell),
          })),
        ),
      );
    for (const [key, cells] of byJunction)
      junction.set(
        key,
        weightedMedian(
          cells.map((cell) => ({
            value: (cell.celsius - (setpoint.get(cell.setpoint) ?? 0)) / cell.perJunctionCelsius,
            weight: weightOf(cell) * cell.perJunctionCelsius ** 2,
          })),
        ),
      );
    // What all junctions have in common cannot be told from a shift of the references, and is left to them.
    const middle = median([...junction.values()]);
    for (const [key, value] of junction) junction.set(key, Number.isNaN(middle) ? value : value - middle);
  }
  return { setpoint, junction };
};

const ownScatter = ({ standardCelsius, parts }: DifferenceCell): number =>
  standardCelsius * Math.sqrt(parts.own + parts.ownAtSetpoint);
/** What references and meter may be wrong by at all setpoints together, and at one of them beside the others. */
const commonScatter = ({ standardCelsius, parts }: DifferenceCell): number =>
  standardCelsius * Math.sqrt(parts.common);
const atSetpointScatter = ({ standardCelsius, parts }: DifferenceCell): number =>
  standardCelsius * Math.sqrt(parts.commonAtSetpoint + differsByPoint * parts.common);

type Own = {
  readonly key: string;
  readonly celsius: number;
  readonly scatter: number;
  readonly sensors: number;
};

/** What the sensors agree on at a setpoint, and how far they scatter about it. */
const atSetpoint = (key: string, cells: readonly DifferenceCell[], fit: Fit): Own => {
  const celsius = fit.setpoint.get(key) ?? 0;
  const rest = cells.map(
    (cell) => cell.celsius - celsius - cell.perJunctionCelsius * (fit.junction.get(cell.junction) ?? 0),
  );
  const scatter = Math.max(robustSpread(rest), leastOfBudget * median(cells.map(ownScatter)));
  return { key, celsius, scatter: medianError(scatter, cells.length), sensors: cells.length };
};

/** What all setpoints have in common, and what one has beside it. */
const referenceShifts = (bySetpoint: Groups, fit: Fit): Pick<CommonShifts, "run" | "setpoints"> => {
  const all = [...bySetpoint].map(([key, cells]) => ({ cells, ...atSetpoint(key, cells, fit) }));
  if (all.length === 0) return { run: null, setpoints: [] };
  const shared = median(all.map(({ celsius }) => celsius));
  const common = median(all.flatMap(({ cells }) => cells.map(commonScatter)));
  const run = {
    key: "",
    celsius: shared,
    score: Math.abs(shared) / Math.hypot(common, median(all.map(({ scatter }) => scatter))),
    sensors: Math.max(...all.map(({ sensors }) => sensors)),
  };
  // Of one or two setpoints, none is the odd one out.
  const base = all.length < fewestSetpoints ? 0 : shared;
  return {
    run,
    setpoints: all.map(({ key, cells, celsius, scatter, sensors }) => {
      const allowed = median(cells.map(all.length < fewestSetpoints ? commonScatter : atSetpointScatter));
      return {
        key,
        celsius: celsius - base,
        score: Math.abs(celsius - base) / Math.hypot(allowed, scatter),
        sensors,
      };
    }),
  };
};

/** One figure a sensor: its setpoints share its place and its wire, and count once. */
const bySensor = (cells: readonly DifferenceCell[], fit: Fit): readonly number[] =>
  [...grouped(cells, ({ sensor }) => sensor).values()].map((own) =>
    median(
      own.map((cell) => (cell.celsius - (fit.setpoint.get(cell.setpoint) ?? 0)) / cell.perJunctionCelsius),
    ),
  );

const junctionShifts = (byJunction: Groups, fit: Fit): readonly Shift[] => {
  const sensorsOf = new Map([...byJunction].map(([key, cells]) => [key, bySensor(cells, fit)]));
  const spread = robustSpread(
    [...sensorsOf].flatMap(([key, own]) => own.map((value) => value - (fit.junction.get(key) ?? 0))),
  );
  return [...byJunction].map(([key, cells]) => {
    const celsius = fit.junction.get(key) ?? 0;
    const sensors = sensorsOf.get(key)?.length ?? 0;
    const budgeted = median(cells.map((cell) => ownScatter(cell) / Math.abs(cell.perJunctionCelsius)));
    const scatter = Math.max(spread, leastOfBudget * budgeted);
    const common = Math.SQRT2 * median(cells.map(({ junctionStandardCelsius }) => junctionStandardCelsius));
    return {
      key,
      celsius,
      score: Math.abs(celsius) / Math.hypot(medianError(scatter, sensors), common),
      sensors,
    };
  });
};

const enough = (groups: Groups): Groups =>
  new Map(
    [...groups].filter(([, cells]) => new Set(cells.map(({ sensor }) => sensor)).size >= fewestSensors),
  );

export const commonShifts = (cells: readonly DifferenceCell[]): CommonShifts => {
  const bySetpoint = enough(grouped(cells, ({ setpoint }) => setpoint));
  const telling = cells.filter(
    ({ perJunctionCelsius, setpoint }) =>
      Math.abs(perJunctionCelsius) >= leastLeverage && bySetpoint.has(setpoint),
  );
  const junctions = enough(grouped(telling, ({ junction }) => junction));
  // One junction alone cannot be told from the references.
  const byJunction: Groups = junctions.size > 1 ? junctions : new Map();
  const fit = polish(bySetpoint, byJunction);
  return { ...referenceShifts(bySetpoint, fit), junctions: junctionShifts(byJunction, fit) };
};
