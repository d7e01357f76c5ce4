import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import type { UncertaintyInput } from "@/lib/domain/evidence/uncertainty-input";
import { drawTruth } from "./draw-truth";
import { type Random, randomFrom } from "./random";
import { type Figures, inputs, program, figures as scenarioFigures, sensorInputs, sensors } from "./scenario";
import { evidenceOf, trueEmf } from "./simulate-run";
import { simulateScans } from "./simulate-scans";

/**
 * A furnace whose errors are exactly those its budget states: AN INVENTED SCENARIO. The scenario's budget is led by
 * rectangles, which Student's k covers to 97 % and more; here the references' certificates, a normal distribution, lead
 * at every setpoint and for every type, so that the stated 95.45 % can be put to the test. What pooled data give is drawn
 * as pooled data: each laboratory knows its repeatability from 13 runs of its own only.
 */
const figures: Figures = {
  ...scenarioFigures,
  referenceExpandedCelsius: 1.2,
  referenceDriftCelsius: 0.2,
  sensor: {
    K: { ...scenarioFigures.sensor.K, inhomogeneity: 0.0003 },
    N: { ...scenarioFigures.sensor.N, inhomogeneity: 0.0003 },
    S: { ...scenarioFigures.sensor.S, inhomogeneity: 0.0002 },
  },
};

const WINDOW_SECONDS = 900;
const SECONDS_BETWEEN_SCANS = 60;

export type MatchedRun = {
  /** One sensor at one setpoint, its window accepted. */
  readonly evidence: EvidenceInput;
  readonly trueEmfMicrovolt: number;
};

/** One independent furnace with one point: which sensor, and at which setpoint, the seed draws. */
export const matchedRun = (seed: number): MatchedRun => {
  const random = randomFrom(seed);
  const celsius = random.pick(program.setpointsCelsius);
  const sensor = random.pick(sensors);
  const truth = drawTruth(random, 1, figures);
  // At rest from the first reading: what remains is a slow creep.
  const atRest = {
    ...program,
    setpointsCelsius: [celsius],
    startCelsius: celsius,
    dwellSeconds: WINDOW_SECONDS,
  };
  const response = {
    overshootCelsius: 0,
    settlingSeconds: 200,
    offsetCelsius: random.rectangular(0.8),
    creepCelsiusPerHour: random.rectangular(0.15),
  };
  const whole = evidenceOf(seed, simulateScans(atRest, response, truth, random, SECONDS_BETWEEN_SCANS));
  const load = whole.load.filter(
    ({ item }) => item.kind === "reference" || ("id" in item && item.id === sensor.id),
  );
  const channels = new Set(load.map(({ channel }) => channel));
  const own = sensorInputs(sensor.type);
  const evidence: EvidenceInput = {
    ...whole,
    load,
    sensors: whole.sensors.flatMap((candidate) =>
      candidate.id === sensor.id
        ? [
            {
              ...candidate,
              inhomogeneity: withHalfWidth(own.inhomogeneity, figures.sensor[sensor.type].inhomogeneity),
              repeatability: pooled(random, own.repeatability),
            },
          ]
        : [],
    ),
    references: whole.references.map((reference) => ({
      ...reference,
      calibrationUncertainty: { ...inputs.referenceCalibration, expanded: figures.referenceExpandedCelsius },
      drift: withHalfWidth(inputs.referenceDrift, figures.referenceDriftCelsius),
    })),
    referenceRepeatability: pooled(random, inputs.referenceRepeatability),
    setpoints: whole.setpoints.filter(({ nominalCelsius }) => nominalCelsius === celsius),
    scans: { ...whole.scans, channels: whole.scans.channels.filter(({ channel }) => channels.has(channel)) },
    windows: [{ setpoint: `SP${celsius}`, fromSeconds: 0, toSeconds: WINDOW_SECONDS }],
  };
  return { evidence, trueEmfMicrovolt: trueEmf(truth)(sensor.id, celsius) };
};

/** The same rectangle with another half-width. */
function withHalfWidth(input: UncertaintyInput, halfWidth: number): UncertaintyInput {
  return input.kind === "rectangular" ? { ...input, halfWidth } : input;
}

/** The standard deviation as a laboratory finds it: σ·√(χ²(ν)/ν). */
function pooled(random: Random, input: UncertaintyInput): UncertaintyInput {
  if (input.kind !== "standard" || input.degreesOfFreedom === undefined) return input;
  let square = 0;
  for (let n = 0; n < input.degreesOfFreedom; n += 1) {
    const deviate = random.normal(1);
    square += deviate * deviate;
  }
  return { ...input, standard: input.standard * Math.sqrt(square / input.degreesOfFreedom) };
}
