import { z } from "zod";
import { numberArray, signArray } from "./number-array";

/**
 * The evidence file, version 1, as it was: files of that version are still read (`upgrade-evidence.ts`), so
 * nothing here changes any more. Version 2 (`schema.ts`) extends these parts.
 */

const id = z.string().min(1).max(80);
const source = z.string().min(1).max(400);

/** Letter types whose reference functions the engine holds (IEC 60584-1). */
export const TypeLetter = z.enum(["K", "N", "R", "S"]);

/**
 * One input of the budget. `relative` is a fraction of the emf it acts on (0.0002 = 0.02 %).
 * A line that is absent in truth is written down as `zero` with its reason, never left out.
 */
export const UncertaintyInput = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("rectangular"),
    halfWidth: z.number().nonnegative(),
    unit: z.enum(["celsius", "microvolt", "relative"]),
    source,
  }),
  z.strictObject({
    kind: z.literal("expanded"),
    expanded: z.number().nonnegative(),
    coverageFactor: z.number().positive(),
    unit: z.enum(["celsius", "microvolt", "relative"]),
    degreesOfFreedom: z.number().positive().optional(),
    source,
  }),
  z.strictObject({
    kind: z.literal("standard"),
    standard: z.number().nonnegative(),
    unit: z.enum(["celsius", "microvolt", "relative"]),
    degreesOfFreedom: z.number().positive().optional(),
    source,
  }),
  z.strictObject({ kind: z.literal("zero"), reason: source }),
]);

/** A calibration certificate of a standard or an instrument, as far as the result rests on it. */
export const CalibrationEvidence = z.strictObject({
  certificate: z.string().min(1).max(120),
  issuer: z.string().min(1).max(200),
  accreditation: z.string().max(200).optional(),
  performedOn: z.iso.date(),
  dueOn: z.iso.date().optional(),
  /** Where a value here is not published but ours, it says so. */
  note: z.string().max(600).optional(),
});

/** Deviation of a reference from its reference function, E_ref − E_table in µV, at its certificate's temperatures. */
export const DeviationPoint = z.strictObject({ celsius: z.number(), deviationMicrovolt: z.number() });

/** Given sensitivities, as a published example prints them: °C/µV at temperature (and at the junction's temperature). */
export const GivenSensitivity = z.strictObject({
  celsiusPerMicrovolt: z.number().positive(),
  celsiusPerMicrovoltAtJunction: z.number().positive(),
});

export const ToleranceRef = z.strictObject({
  standard: z.enum(["IEC 60584-1:2013"]),
  class: z.enum(["1", "2", "3"]),
});

export const DecisionRule = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("none") }),
  z.strictObject({ kind: z.literal("simple") }),
  /** Acceptance limit = tolerance limit − guardBandRatio × U (ILAC-G8:09/2019, JCGM 106:2012). Non-binary wording. */
  z.strictObject({ kind: z.literal("guarded"), guardBandRatio: z.number().min(0).max(3) }),
]);

export const SensorEvidence = z.strictObject({
  id,
  serial: z.string().min(1).max(120),
  type: TypeLetter,
  construction: z.string().max(300).optional(),
  /** Sheath about the wires: decides whether platinum may stand beside it. */
  protection: z.enum(["bare-wire", "alumina-sheath", "metal-sheath", "other"]).default("other"),
  tolerance: ToleranceRef.nullable(),
  repeatability: UncertaintyInput,
  inhomogeneity: UncertaintyInput,
  /** Extension or compensating lead between the sensor and its reference junction. */
  lead: UncertaintyInput,
  givenSensitivity: GivenSensitivity.optional(),
  /** Where this sensor was ordered otherwise than the rest of the load: its own rule, its own digits of U. */
  decisionRule: DecisionRule.optional(),
  uncertaintyDigits: z.union([z.literal(1), z.literal(2)]).optional(),
});

export const ReferenceEvidence = z.strictObject({
  id,
  serial: z.string().min(1).max(120),
  type: TypeLetter,
  protection: z.enum(["bare-wire", "alumina-sheath", "metal-sheath", "other"]).default("other"),
  calibration: CalibrationEvidence,
  /** At least one point; between points linear, outside the points no value: the run is refused there. */
  deviations: z.array(DeviationPoint).min(1),
  /** A single point stands for its neighbourhood only; this says how wide (°C each side). */
  singlePointReachCelsius: z.number().positive().optional(),
  calibrationUncertainty: UncertaintyInput,
  drift: UncertaintyInput,
  inhomogeneity: UncertaintyInput,
  givenSensitivity: GivenSensitivity.optional(),
});

export const VoltmeterEvidence = z.strictObject({
  id,
  serial: z.string().min(1).max(120),
  calibration: CalibrationEvidence,
  /** Correction to be added to the indication, µV, at indications in µV; linear between, constant outside; empty = none. */
  corrections: z.array(z.strictObject({ microvolt: z.number(), correctionMicrovolt: z.number() })),
  calibrationUncertainty: UncertaintyInput,
  drift: UncertaintyInput,
  resolution: UncertaintyInput,
});

export const ScannerEvidence = z.strictObject({
  id,
  serial: z.string().min(1).max(120),
  calibration: CalibrationEvidence.nullable(),
  parasitic: UncertaintyInput,
});

export const JunctionEvidence = z.strictObject({
  id,
  serial: z.string().max(120).optional(),
  celsius: z.number().min(-5).max(60),
  calibration: CalibrationEvidence.nullable(),
  uncertainty: UncertaintyInput,
});

export const ConfigurationEvidence = z.strictObject({
  furnace: z.string().min(1).max(200),
  kind: z.enum(["bare-tube", "equalising-block"]),
  name: z.string().min(1).max(200),
  characterisation: z.strictObject({
    performedOn: z.iso.date().optional(),
    validUntil: z.iso.date().optional(),
    /** Differences between any sensor's place and the references' mean, axial and radial together. */
    uniformity: UncertaintyInput,
    /** Length, temperature, half or full range: without these a uniformity figure means nothing. */
    statement: z.string().max(600),
  }),
});

export const LoadPlace = z.strictObject({
  /** Place in the bundle or the number of the bore. */
  place: z.string().min(1).max(40),
  item: z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("sensor"), id }),
    z.strictObject({ kind: z.literal("reference"), id }),
    z.strictObject({ kind: z.literal("shorted") }),
  ]),
  channel: z.string().min(1).max(40),
  junction: id,
  immersionMillimetre: z.number().positive().optional(),
  /** Rise seen on this channel when this tip alone was warmed, µV; null = not done (a published example). */
  tipCheckRiseMicrovolt: z.number().nullable().default(null),
});

/** Readings of one channel. The three arrays have one length. `microvolts` are as indicated, sign included. */
export const ChannelReadings = z.strictObject({
  channel: z.string().min(1).max(40),
  seconds: numberArray(),
  microvolts: numberArray(),
  /** +1 forward, −1 leads reversed: a reversed reading has the opposite sign. */
  polarity: signArray(),
});

export const WindowEvidence = z.strictObject({
  setpoint: id,
  fromSeconds: z.number(),
  toSeconds: z.number(),
});

/** A sensor's state at a setpoint where it was not simply measured. */
export const SensorSetpointState = z.strictObject({
  sensor: id,
  setpoint: id,
  state: z.enum(["invalid", "not-reached"]),
  reason: z.string().min(1).max(600),
});

export const EvidenceV1 = z.strictObject({
  format: z.literal("emfolio-evidence"),
  version: z.literal(1),
  title: z.string().min(1).max(300),
  origin: z.enum(["published-example", "laboratory", "simulated"]),
  /** For a published example: what was published, and what was added by us. */
  source: z.string().max(2000).optional(),
  sensors: z.array(SensorEvidence).min(1),
  configuration: ConfigurationEvidence,
  load: z.array(LoadPlace).min(2),
  references: z.array(ReferenceEvidence).min(1),
  referenceRepeatability: UncertaintyInput,
  voltmeter: VoltmeterEvidence,
  scanner: ScannerEvidence,
  junctions: z.array(JunctionEvidence).min(1),
  setpoints: z.array(z.strictObject({ id, nominalCelsius: z.number() })).min(1),
  scans: z.strictObject({
    startedAt: z.iso.datetime({ offset: true }).optional(),
    channels: z.array(ChannelReadings).min(2),
  }),
  windows: z.array(WindowEvidence),
  states: z.array(SensorSetpointState).default([]),
  sensitivities: z.enum(["reference-functions", "given"]),
  /** Coverage probability of U; 0.9545 is ±2σ of the normal distribution. */
  coverageProbability: z.literal(0.9545).default(0.9545),
  decisionRule: DecisionRule,
  rounding: z.strictObject({ uncertaintyDigits: z.union([z.literal(1), z.literal(2)]) }),
});
export type EvidenceV1 = z.infer<typeof EvidenceV1>;
