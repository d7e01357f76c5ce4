import { mean } from "../number/mean";
import { found, type Outcome, refused } from "../outcome";

export type ImmersionInput = {
  /** Tip's depth from the mouth of the tube, the probe there, and the fixed monitor at the same moment. */
  readonly readings: readonly {
    readonly millimetre: number;
    readonly probeCelsius: number;
    readonly monitorCelsius: number;
  }[];
  /** How far below the best a depth may read, °C. */
  readonly limitCelsius: number;
  readonly meterCelsius: number;
};

export type ImmersionProfile = {
  /** Against the best depth, °C: nought there, below it elsewhere. */
  readonly depths: readonly {
    readonly millimetre: number;
    readonly celsius: number;
    readonly isWithin: boolean;
  }[];
  readonly bestMillimetre: number;
  /** The depths about the best, without a gap, that are within the limit. */
  readonly fromMillimetre: number;
  readonly toMillimetre: number;
  /** Half of what reading changes between two neighbouring depths within them, at most, °C. */
  readonly halfDifferenceCelsius: number;
  /** Distance of the two depths it was found between, mm. */
  readonly stepMillimetre: number;
  readonly standardUncertainty: number;
};

const FEWEST_DEPTHS = 3;

/**
 * Immersion: the reading of a probe at several depths, less the monitor's, and the depths about the highest that are
 * within a limit of it. In a furnace hotter than the room, heat lost along a sensor always lowers its reading, so the
 * highest is the best. Half the difference of two neighbouring depths there bounds what is still lost (two
 * immersions 20 to 30 mm apart, half the difference into U: common practice, no source). Only depths that were
 * measured are named; nothing is interpolated. u of the half difference: the meter's u and half the largest
 * disagreement of a depth's own visits as a rectangle (u = d/2/√3) at both depths: √2/2 of the two together.
 *
 * °C and mm. Problems: `not-finite`; `not-applicable` for a limit not above 0 or an uncertainty below 0; `too-few` for fewer
 * than three depths, or where no neighbour of the best is within the limit.
 */
export function immersionProfile(input: ImmersionInput): Outcome<ImmersionProfile> {
  const { readings, limitCelsius, meterCelsius } = input;
  const numbers = [limitCelsius, meterCelsius, ...readings.flatMap((reading) => Object.values(reading))];
  if (!numbers.every(Number.isFinite)) return refused("not-finite", "a depth or a reading is not a number");
  if (!(limitCelsius > 0 && meterCelsius >= 0)) {
    return refused("not-applicable", "a limit above 0 and an uncertainty from zero up");
  }
  const places = [...new Set(readings.map(({ millimetre }) => millimetre))].sort((a, b) => a - b);
  if (places.length < FEWEST_DEPTHS) return refused("too-few", "it takes three depths");
  const visits = places.map((place) =>
    readings
      .filter(({ millimetre }) => millimetre === place)
      .map(({ probeCelsius, monitorCelsius }) => probeCelsius - monitorCelsius),
  );
  const values = visits.map((visit) => mean(visit));
  const best = values.reduce((at, value, i) => (value > (values[at] as number) ? i : at), 0);
  const top = values[best] as number;
  const isWithin = (i: number) => top - (values[i] as number) <= limitCelsius;
  let from = best;
  let to = best;
  while (from > 0 && isWithin(from - 1)) from -= 1;
  while (to < places.length - 1 && isWithin(to + 1)) to += 1;
  if (from === to) {
    return refused("too-few", `no depth beside ${places[best]} mm is within ${limitCelsius} °C of it`);
  }
  let halfDifferenceCelsius = -1;
  let stepMillimetre = 0;
  for (let i = from; i < to; i += 1) {
    const half = Math.abs((values[i + 1] as number) - (values[i] as number)) / 2;
    if (half <= halfDifferenceCelsius) continue;
    halfDifferenceCelsius = half;
    stepMillimetre = (places[i + 1] as number) - (places[i] as number);
  }
  const disagreement = Math.max(...visits.map((visit) => Math.max(...visit) - Math.min(...visit)));
  return found({
    depths: places.map((millimetre, i) => ({
      millimetre,
      celsius: (values[i] as number) - top,
      isWithin: i >= from && i <= to,
    })),
    bestMillimetre: places[best] as number,
    fromMillimetre: places[from] as number,
    toMillimetre: places[to] as number,
    halfDifferenceCelsius,
    stepMillimetre,
    standardUncertainty: Math.sqrt((meterCelsius * meterCelsius + (disagreement * disagreement) / 12) / 2),
  });
}
