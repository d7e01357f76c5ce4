import { z } from "zod";
import { CapabilityForm, capabilityGap } from "./capability";
import * as v1 from "./schema-v1";
import {
  DriftInput,
  FurnaceInput,
  InhomogeneityInput,
  InterpolationInput,
  RepeatabilityInput,
  UncertaintyInput,
} from "./uncertainty-input";

/**
 * The evidence file, version 2: everything one run's results rest on, in one JSON document.
 * Units are in the names: celsius, microvolt, seconds (since `scans.startedAt`), millimetre.
 * What the platform stores for a run is this same thing; the `evaluate` command reads it, and files of
 * version 1 as well (`upgrade-evidence.ts`).
 */

const { CalibrationEvidence, ChannelReadings, GivenSensitivity } = v1;

export { CalibrationEvidence, ChannelReadings, GivenSensitivity };
export const { DeviationPoint, SensorSetpointState, WindowEvidence } = v1;

const [noRule, simple, guarded] = v1.DecisionRule.options;
/** As agreed before measurement; clauses of ILAC-G8:09/2019. */
export const DecisionRule = z.discriminatedUnion("kind", [
  noRule,
  /** 4.2.1. `largestRatio`: decided only where U is at most that part of the tolerance ("4:1" is 0.25). */
  simple.extend({ largestRatio: z.number().positive().max(2).optional() }),
  guarded,
  /** 4.2.2, pass or fail. Below 0: only what lies beyond tolerance + |ratio| × U is rejected. */
  z.strictObject({ kind: z.literal("guarded-binary"), guardBandRatio: z.number().min(-1).max(3) }),
  /** Guard band from the risk of false acceptance at the acceptance limit, by the degrees of freedom of u. */
  z.strictObject({
    kind: z.literal("target-risk"),
    falseAcceptance: z.number().min(0.000001).max(0.5),
    isBinary: z.boolean(),
  }),
]);
export type DecisionRule = z.infer<typeof DecisionRule>;

const id = z.string().min(1).max(80);
const source = z.string().min(1).max(400);

/**
 * What a sensor is judged by: a class of a published standard, or the customer's own limit: ± `fixedCelsius`, or `percent`
 * of the temperature in the unit of `base` where that is more. `source` says what was agreed, and where.
 */
export const ToleranceRef = z.union([
  v1.ToleranceRef,
  z.strictObject({ standard: z.literal("ASTM E230/E230M"), class: z.enum(["standard", "special"]) }),
  z.strictObject({
    kind: z.literal("user"),
    fixedCelsius: z.number().positive().max(1000),
    percent: z.number().positive().max(100).optional(),
    /** The unit it was agreed in; a percentage is taken of the temperature in it. */
    base: z.enum(["celsius", "fahrenheit"]),
    source,
  }),
]);
export type ToleranceRef = z.infer<typeof ToleranceRef>;

/** Letter types whose reference functions the engine holds. */
export const TypeLetter = z.enum(["B", "E", "J", "K", "N", "R", "S", "T", "C", "A"]);
export type TypeLetter = z.infer<typeof TypeLetter>;

/** References may be of pure metals too. */
export const ReferenceType = z.enum([...TypeLetter.options, "Au/Pt", "Pt/Pd"]);
export type ReferenceType = z.infer<typeof ReferenceType>;

const range = { fromCelsius: z.number(), toCelsius: z.number() };
/** Between the points: straight lines where nothing is said, or a cubic that does not overshoot. */
const between = z.enum(["linear", "monotone-cubic"]).optional();
/** A single point stands for its neighbourhood only; this says how wide (°C each side). */
const singlePointReachCelsius = z.number().positive().optional();

/**
 * What a reference's certificate says of it, within its range only: beyond it the run is refused.
 * `points`: deviation E_ref − E_table in µV at temperatures; `error-points`: error (indication − t) in °C;
 * `polynomial` and `error-polynomial`: the same as Σ aᵢ·tⁱ; `coefficients`: the reference's own emf in µV as Σ aᵢ·tⁱ.
 */
export const ReferenceCorrection = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("points"),
    points: z.array(v1.DeviationPoint).min(1),
    between,
    singlePointReachCelsius,
  }),
  z.strictObject({
    kind: z.literal("error-points"),
    points: z.array(z.strictObject({ celsius: z.number(), errorCelsius: z.number() })).min(1),
    between,
    singlePointReachCelsius,
  }),
  z.strictObject({
    kind: z.literal("polynomial"),
    coefficientsMicrovolt: z.array(z.number()).min(1).max(16),
    ...range,
  }),
  z.strictObject({
    kind: z.literal("error-polynomial"),
    coefficientsCelsius: z.array(z.number()).min(1).max(16),
    ...range,
  }),
  z.strictObject({
    kind: z.literal("coefficients"),
    coefficientsMicrovolt: z.array(z.number()).min(2).max(16),
    ...range,
  }),
]);
export type ReferenceCorrection = z.infer<typeof ReferenceCorrection>;

/** How a sensor's deviation function is fitted to its points; the procedure names it. */
export const DeviationFunctionChoice = z.strictObject({
  degreeRule: z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("fixed"), degree: z.int().min(0).max(6) }),
    /** The highest degree whose last term lowers χ² more than chance would at this probability. */
    z.strictObject({
      kind: z.literal("f-test"),
      maximumDegree: z.int().min(0).max(6),
      probability: z.number().gt(0).lt(1),
    }),
    /** The lowest degree at which no residual exceeds `limit` times its point's own standard uncertainty. */
    z.strictObject({
      kind: z.literal("residuals"),
      maximumDegree: z.int().min(0).max(6),
      limit: z.number().positive(),
    }),
  ]),
  /** Through 0 µV at 0 °C. */
  isThroughZero: z.boolean(),
  /** The whole covariance through the fit, or each point's own part and the common part unreduced. */
  method: z.enum(["propagated", "own-plus-common"]),
  /** Only where scope and customer agreed: the function may be used below its lowest measured point. */
  allowBelow: z.strictObject({ downToCelsius: z.number(), agreement: source }).nullable(),
  table: z
    .strictObject({ unit: z.enum(["celsius", "fahrenheit"]), step: z.int().min(1).max(1000) })
    .optional(),
});
export type DeviationFunctionChoice = z.infer<typeof DeviationFunctionChoice>;

export const SensorEvidence = v1.SensorEvidence.extend({
  type: TypeLetter,
  tolerance: ToleranceRef.nullable(),
  repeatability: RepeatabilityInput,
  inhomogeneity: InhomogeneityInput,
  lead: UncertaintyInput,
  /** Cable of the laboratory's between sensor and junction: its lot's correction is added to the emf. */
  cable: z.strictObject({ lot: z.string().min(1).max(80), correctionMicrovolt: z.number() }).optional(),
  /** Half the difference of two immersions 20 to 30 mm apart, where they were measured. */
  immersion: UncertaintyInput,
  /** Leakage through hot mineral insulation; matters above about 1000 °C. */
  shunting: UncertaintyInput,
  /** Only where it was agreed that it enters U. */
  hysteresis: UncertaintyInput,
  decisionRule: DecisionRule.optional(),
  deviationFunction: DeviationFunctionChoice.optional(),
  /** Why the results of this sensor are reported outside the scope, whatever its type; left out: as the scope says. */
  outsideScope: source.optional(),
});

export const ReferenceEvidence = v1.ReferenceEvidence.omit({
  deviations: true,
  singlePointReachCelsius: true,
}).extend({
  type: ReferenceType,
  correction: ReferenceCorrection,
  calibrationUncertainty: UncertaintyInput,
  /** Of the certificate's values between its points. */
  interpolation: InterpolationInput,
  drift: DriftInput,
  /** Of the reference itself, in this furnace: its wires lie in other gradients than when it was calibrated. */
  inhomogeneity: UncertaintyInput,
});

export const LoadPlace = v1.LoadPlace.extend({
  /** Temperature of this place minus the references' mean, °C, where the characterisation gives it: corrected. */
  offsetCelsius: z.number().optional(),
});

export const VoltmeterEvidence = v1.VoltmeterEvidence.extend({
  calibrationUncertainty: UncertaintyInput,
  drift: UncertaintyInput,
  resolution: UncertaintyInput,
});

export const ScannerEvidence = v1.ScannerEvidence.extend({ parasitic: UncertaintyInput });

export const JunctionEvidence = v1.JunctionEvidence.extend({
  /** Of the temperature that the junctions of one block share: its thermometer. */
  uncertainty: UncertaintyInput,
  /** Difference of this channel's own junction from the block's thermometer. */
  spread: UncertaintyInput,
  /** Junctions that name one block share its thermometer. */
  block: id.optional(),
});

const { shape: characterisation } = v1.ConfigurationEvidence.shape.characterisation;
export const ConfigurationEvidence = v1.ConfigurationEvidence.extend({
  characterisation: z.strictObject({
    ...characterisation,
    /** Axial and radial together; zero where the two are stated apart. */
    uniformity: UncertaintyInput,
    axial: FurnaceInput,
    radial: FurnaceInput,
    /** Of a gradient that was corrected (`offsetCelsius` of the places). */
    gradient: UncertaintyInput,
  }),
});

/** How far one error acts on two quantities alike: 0 not at all, 1 fully. */
export const Correlation = z.strictObject({ coefficient: z.number().min(0).max(1), reason: source });
export type Correlation = z.infer<typeof Correlation>;

export const Correlations = z.strictObject({
  /** Between the readings of a reference and of a sensor: calibration and drift of the voltmeter. */
  voltmeter: Correlation,
  /** Between reference and sensor at one junction or at junctions of one block. */
  junction: Correlation,
  /** Between one reference and another. 1 means that averaging them takes nothing off. */
  references: z.strictObject({
    /** Their certificates, and the interpolation between their points. */
    calibration: Correlation,
    drift: Correlation,
    /** Inhomogeneity, parasitic emf, resolution, heater pick-up, junctions apart. */
    own: Correlation,
  }),
});

export const Comparison = z.strictObject({
  /** A shorted channel's mean in the window, taken off every reading that was not reversed. */
  zero: z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("none"), reason: source }),
    z.strictObject({ kind: z.literal("shorted-channel"), channel: z.string().min(1).max(40) }),
  ]),
  /** Terms of the emf's series that carry it to the nominal: the slope alone, or the curvature too. */
  carryOrder: z.union([z.literal(1), z.literal(2)]),
});

/**
 * One line of the laboratory's accredited scope: what U is at best, for sensors of a type in a range; as a number, or
 * (later files) as a formula or a table.
 */
export const ScopeLine = z
  .strictObject({
    type: TypeLetter,
    fromCelsius: z.number(),
    toCelsius: z.number(),
    /** Calibration and measurement capability, U at the probability of `coverageProbability`. */
    expandedCelsius: z.number().positive().optional(),
    capability: CapabilityForm.optional(),
    source,
  })
  .superRefine((line, context) => {
    const { capability, fromCelsius, toCelsius } = line;
    const say = (path: string, message: string) =>
      context.addIssue({ code: "custom", path: [path], message });
    if ((line.expandedCelsius === undefined) === (capability === undefined))
      return say("expandedCelsius", "State the capability once: as expandedCelsius, or as capability");
    const gap = capability && capabilityGap(capability, fromCelsius, toCelsius);
    if (gap) say("capability", `It does not hold from ${fromCelsius} to ${toCelsius} °C: ${gap}`);
  });
export type ScopeLine = z.infer<typeof ScopeLine>;

export const Evidence = v1.EvidenceV1.extend({
  version: z.literal(2),
  sensors: z.array(SensorEvidence).min(1),
  configuration: ConfigurationEvidence,
  load: z.array(LoadPlace).min(2),
  references: z.array(ReferenceEvidence).min(1),
  referenceRepeatability: RepeatabilityInput,
  voltmeter: VoltmeterEvidence,
  scanner: ScannerEvidence,
  /** Seen as a step when the heater is switched off at the highest setpoint. */
  heaterPickup: UncertaintyInput,
  /** Of the temperature difference between sensor and references within a window. */
  stability: UncertaintyInput,
  junctions: z.array(JunctionEvidence).min(1),
  correlation: Correlations,
  comparison: Comparison,
  /**
   * How k is found: Student's t; after the one or two rectangles that dominate, where any do; or by drawing the
   * whole budget (JCGM 101).
   */
  coverage: z.enum(["student", "dominant", "monte-carlo"]),
  /** Left out: no scope is stated, and no point is held against one. */
  scope: z.array(ScopeLine).optional(),
  decisionRule: DecisionRule,
});
export type Evidence = z.infer<typeof Evidence>;
/** What a writer may leave out because the schema has a default. */
export type EvidenceInput = z.input<typeof Evidence>;
