import { heavyRun } from "@/lib/commands/bench/heavy-run";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import { type ReviewedResult, varianceParts } from "@/lib/domain/review/difference-cell";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import { type Random, randomFrom } from "@/lib/station/simulation/random";

/**
 * Forty sensors at eight setpoints, measured a year ago and now. U, its budget, slopes and k of each result are those the
 * engine gave an invented load; only the errors are drawn, from that very budget: what the references and the meter bring is
 * one draw for all sensors, what the junction brings one for all on it, the rest is the sensor's own.
 */
const evaluated = evaluateEvidence(heavyRun());
if (!evaluated.ok) throw new Error("the load does not evaluate");
const templates = evaluated.evaluation.points.filter(
  (point): point is MeasuredPoint => point.state === "measured",
);
export const setpoints = [...new Set(templates.map(({ setpoint }) => setpoint))];
const templateOf = (type: string, setpoint: string): MeasuredPoint =>
  templates.find((point) => point.type === type && point.setpoint === setpoint)!;

const types = ["K", "K", "N", "K", "S"] as const;
export const sensors = Array.from({ length: 40 }, (_, at) => ({
  tag: `T-${String(at + 1).padStart(2, "0")}`,
  type: types[at % types.length]!,
  junction: `J-${1 + Math.floor(at / 10)}`,
}));
type Sensor = (typeof sensors)[number];

const medianOf = (values: readonly number[]): number =>
  [...values].sort((left, right) => left - right)[Math.floor(values.length / 2)]!;

/** How far a result of this type goes for 1 °C of the junction. */
const perJunction = ({ type }: Sensor, setpoint: string): number => {
  const slope = seebeck(referenceFunctions[type], 0);
  return slope.ok ? slope.value / templateOf(type, setpoint).seebeckMicrovoltPerCelsius : 0;
};

/** The errors of one run: each line's draw is shared by those results it is common to, as where a function is fitted. */
const drawRun = (random: Random, isOwnNew: boolean) => {
  const common = random.normal(1);
  const commonAt = new Map(setpoints.map((setpoint) => [setpoint, random.normal(1)]));
  return (sensor: Sensor) => {
    const own = random.normal(1);
    return (setpoint: string): number => {
      const point = templateOf(sensor.type, setpoint);
      const parts = varianceParts(point);
      const drawn =
        Math.sqrt(parts.common) * common +
        Math.sqrt(parts.commonAtSetpoint) * commonAt.get(setpoint)! +
        Math.sqrt(parts.own) * (isOwnNew ? random.normal(1) : own) +
        Math.sqrt(parts.ownAtSetpoint) * random.normal(1);
      return (drawn * point.expandedCelsius) / point.coverageFactor;
    };
  };
};

export type Faults = {
  readonly swapped: readonly [string, string];
  readonly setpoint: string;
  readonly junction: string;
};

/** Which faults, where and how large. */
const drawFaults = (random: Random) => {
  const first = random.pick(sensors);
  const second = random.pick(sensors.filter(({ tag, type }) => type === first.type && tag !== first.tag));
  const size = () => (1 + 2 * random.uniform()) * (random.uniform() < 0.5 ? -1 : 1);
  const setpoint = random.pick(setpoints);
  const { junction } = random.pick(sensors);
  const reference = size() * medianOf(sensors.map(({ type }) => templateOf(type, setpoint).expandedCelsius));
  const onIt = sensors.filter((sensor) => sensor.junction === junction);
  const drift =
    size() *
    medianOf(
      onIt.flatMap((sensor) =>
        setpoints.map((at) => templateOf(sensor.type, at).expandedCelsius / perJunction(sensor, at)),
      ),
    );
  return { first, second, setpoint, junction, reference, drift };
};

export const simulateReview = (
  seed: number,
  {
    hasFaults,
    isOwnNew,
  }: {
    readonly hasFaults: boolean;
    /** A sensor's own errors (wire, place) drawn anew at each setpoint; else one draw for all of them. */
    readonly isOwnNew: boolean;
  },
): { readonly reviewed: readonly ReviewedResult[]; readonly faults: Faults } => {
  const random = randomFrom(seed);
  const faults = drawFaults(random);
  const side = random.uniform() < 0.5 ? -1 : 1;
  // What a sensor is, in U of its results: the later swapped two lie 2 U apart.
  const being = new Map(sensors.map(({ tag }) => [tag, random.normal(1)]));
  being.set(faults.second.tag, being.get(faults.first.tag)! + 2 * side);
  const truth = ({ tag, type }: Sensor, setpoint: string): number =>
    being.get(tag)! * templateOf(type, setpoint).expandedCelsius;
  const before = drawRun(random, isOwnNew);
  const now = drawRun(random, isOwnNew);
  const inPlaceOf = (sensor: Sensor): Sensor => {
    if (!hasFaults) return sensor;
    if (sensor.tag === faults.first.tag) return faults.second;
    return sensor.tag === faults.second.tag ? faults.first : sensor;
  };
  const reviewed = sensors.flatMap((sensor) => {
    const then = before(sensor);
    const today = now(sensor);
    return setpoints.map((setpoint): ReviewedResult => {
      const point = templateOf(sensor.type, setpoint);
      const shift = !hasFaults
        ? 0
        : (setpoint === faults.setpoint ? faults.reference : 0) +
          (sensor.junction === faults.junction ? faults.drift * perJunction(sensor, setpoint) : 0);
      const errorCelsius = truth(inPlaceOf(sensor), setpoint) + today(setpoint) + shift;
      return {
        point: {
          ...point,
          sensor: sensor.tag,
          errorCelsius,
          conformity: { ...point.conformity, state: "no-statement", tolerance: null },
        },
        earlier: {
          sensor: sensor.tag,
          setpoint,
          errorCelsius: truth(sensor, setpoint) + then(setpoint),
          expandedCelsius: point.expandedCelsius,
          coverageFactor: point.coverageFactor,
          certificate: "C-2025-0001",
          performedTo: "2025-11-20",
        },
        junction: sensor.junction,
      };
    });
  });
  return {
    reviewed,
    faults: {
      swapped: [faults.first.tag, faults.second.tag],
      setpoint: faults.setpoint,
      junction: faults.junction,
    },
  };
};
