import type { Random } from "./random";
import {
  type Figures,
  references,
  type SimulatedSensor,
  figures as scenarioFigures,
  sensors,
  zeroChannel,
} from "./scenario";

/**
 * One simulated world: the true value of everything the budget only bounds, each drawn at its own source from the
 * distribution the evidence states for it, never as one total.
 */
export type Truth = {
  /** One draw for all references: same laboratory, same standards, so fully correlated. °C. */
  readonly certificateCelsius: number;
  readonly references: ReadonlyMap<
    string,
    { readonly driftCelsius: number; readonly inhomogeneity: number; readonly placeCelsius: number }
  >;
  readonly sensors: ReadonlyMap<
    string,
    {
      /** True deviation from the reference function, µV, at t in °C. */
      readonly deviationMicrovolt: (celsius: number) => number;
      readonly inhomogeneity: number;
      readonly leadMicrovolt: number;
      /** Temperature at this place minus the references' mean, °C. */
      readonly placeCelsius: number;
    }
  >;
  readonly voltmeterMicrovolt: number;
  readonly junctionCelsius: number;
  readonly parasiticMicrovolt: ReadonlyMap<string, number>;
  /** What does not repeat from one occasion to the next: item id + setpoint index → °C (references) or µV (sensors). */
  readonly occasion: (item: string, setpointIndex: number) => number;
};

/** A plausible maker's spread: within about class 1 at the top for most sensors. Invented. */
const spreadAt1000 = { K: 45, N: 45, S: 6 } as const;

const drawDeviation = (random: Random, type: SimulatedSensor["type"]): ((celsius: number) => number) => {
  const linear = random.normal(spreadAt1000[type]) / 1000;
  const square = random.normal(spreadAt1000[type] / 2) / 1_000_000;
  return (celsius) => linear * celsius + square * celsius * celsius;
};

export const drawTruth = (
  random: Random,
  setpointCount: number,
  figures: Figures = scenarioFigures,
): Truth => {
  const certificateCelsius = random.normal(figures.referenceExpandedCelsius / 2);
  // The two references stand at opposite sides of the load: what one gains the other loses about their mean.
  const across = random.rectangular(0.15);
  const occasions = new Map<string, number>();
  const repeat = (item: string, standardDeviation: number): void => {
    for (let index = 0; index < setpointCount; index++)
      occasions.set(`${item}#${index}`, random.normal(standardDeviation));
  };
  return {
    certificateCelsius,
    references: new Map(
      references.map((reference, index) => {
        repeat(reference.id, figures.referenceRepeatabilityCelsius);
        return [
          reference.id,
          {
            driftCelsius: random.rectangular(figures.referenceDriftCelsius),
            inhomogeneity: random.rectangular(figures.referenceInhomogeneity),
            placeCelsius: index === 0 ? across : -across,
          },
        ];
      }),
    ),
    sensors: new Map(
      sensors.map((sensor) => {
        const own = figures.sensor[sensor.type];
        repeat(sensor.id, own.repeatabilityMicrovolt);
        return [
          sensor.id,
          {
            deviationMicrovolt: drawDeviation(random, sensor.type),
            inhomogeneity: random.rectangular(own.inhomogeneity),
            leadMicrovolt: random.rectangular(own.leadMicrovolt),
            placeCelsius: random.rectangular(figures.uniformityCelsius),
          },
        ];
      }),
    ),
    voltmeterMicrovolt:
      random.normal(figures.voltmeterExpandedMicrovolt / 2) +
      random.rectangular(figures.voltmeterDriftMicrovolt),
    junctionCelsius: random.rectangular(figures.junctionCelsius),
    parasiticMicrovolt: new Map(
      [...references, ...sensors, zeroChannel].map(({ channel }) => [
        channel,
        random.rectangular(figures.scannerParasiticMicrovolt),
      ]),
    ),
    occasion: (item, setpointIndex) => occasions.get(`${item}#${setpointIndex}`) ?? 0,
  };
};
