import type { SurveyKind } from "@/lib/domain/furnace/survey-kinds";
import type { SurveyReadings } from "@/lib/domain/furnace/survey-readings";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { type Random, randomFrom } from "./random";

/** A furnace as it truly is in a simulation: AN INVENTED SCENARIO, nothing here is published. */
export type SurveyedFurnace = {
  readonly celsius: number;
  /** Where it is hottest, and how far it has fallen 30 mm from there. */
  readonly bestMillimetre: number;
  readonly fallCelsius: number;
  /** Each position against the centre. */
  readonly places: Readonly<Record<string, number>>;
  /** Furnace's own drift over the survey, seen by everything in it. */
  readonly driftCelsius: number;
  readonly noiseMicrovolt: number;
};

const probeOffsetCelsius = 0.62;
const monitorOffsetCelsius = -0.35;

/** Type S throughout, junctions in ice. The monitor stands a little off the best depth. */
const microvoltOf = (celsius: number): number => {
  const found = emf(referenceFunctions.S, celsius);
  if (!found.ok) throw new RangeError(found.problem.message);
  return found.value;
};

class Survey {
  private readonly random: Random;
  constructor(
    private readonly furnace: SurveyedFurnace,
    seed: number,
  ) {
    this.random = randomFrom(seed);
  }

  read(celsius: number): number {
    const shown = microvoltOf(celsius) + this.random.normal(this.furnace.noiseMicrovolt);
    return Math.floor(shown * 10 + 0.5) / 10;
  }

  /** Share of the survey that is over, from 0 to 1. */
  at(share: number): number {
    return this.furnace.celsius + this.furnace.driftCelsius * (share - 0.5);
  }

  along(millimetre: number): number {
    const apart = (millimetre - this.furnace.bestMillimetre) / 30;
    return -this.furnace.fallCelsius * apart * apart;
  }
}

const shared = { unit: "microvolt", junctionCelsius: 0 } as const;

/** The stops there and back, or the depths, with probe and monitor at each. */
const stopsOf = (survey: Survey, depths: readonly number[]) =>
  depths.map((millimetre, i) => {
    const now = survey.at(i / (depths.length - 1));
    return {
      millimetre,
      probe: survey.read(now + probeOffsetCelsius + survey.along(millimetre)),
      monitor: survey.read(now + monitorOffsetCelsius),
      minutes: 4 * i,
    };
  });

const thereAndBack = (depths: readonly number[]): readonly number[] => [...depths, ...depths.toReversed()];

/** As many thermocouples as positions, each moved on by one from arrangement to arrangement, and once more to close the ring. */
const exchangeOf = (survey: Survey, furnace: SurveyedFurnace) => {
  const places = Object.entries(furnace.places);
  return Array.from({ length: places.length + 1 }, (_, turn) =>
    places.map(([place, against], i) => {
      const which = (i + turn) % places.length;
      return {
        arrangement: turn + 1,
        place,
        sensor: `TC-${which + 1}`,
        value: survey.read(survey.at(turn / places.length) + against + 0.3 * which),
      };
    }),
  ).flat();
};

/** What a technician would write down, survey by survey; the same for the same seed. */
export const simulateSurvey = (kind: SurveyKind, furnace: SurveyedFurnace, seed: number): SurveyReadings => {
  const survey = new Survey(furnace, seed);
  const around = (steps: readonly number[]) => steps.map((step) => furnace.bestMillimetre + step);
  switch (kind) {
    case "axial":
      return { kind, ...shared, rows: stopsOf(survey, thereAndBack(around([-30, -20, -10, 0, 10, 20, 30]))) };
    case "immersion":
      return {
        kind,
        ...shared,
        limitCelsius: 0.3,
        rows: stopsOf(survey, around([-100, -75, -50, -25, 0, 25])),
      };
    case "positions":
      return {
        kind,
        ...shared,
        centre: Object.keys(furnace.places)[0] ?? "",
        rows: exchangeOf(survey, furnace),
      };
    case "stability":
      return {
        kind,
        ...shared,
        rows: Array.from({ length: 61 }, (_, minutes) => ({
          minutes,
          value: survey.read(survey.at(minutes / 60) + monitorOffsetCelsius),
        })),
      };
  }
};
