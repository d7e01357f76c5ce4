import { z } from "zod";

const source = z.string().min(1).max(400);
const unit = z.enum(["celsius", "microvolt", "relative"]);
/** The line acts at this temperature and above only, such as the shunting of mineral insulation. */
const fromCelsius = z.number().optional();

const Rectangular = z.strictObject({
  kind: z.literal("rectangular"),
  halfWidth: z.number().nonnegative(),
  unit,
  fromCelsius,
  source,
});
const Expanded = z.strictObject({
  kind: z.literal("expanded"),
  expanded: z.number().nonnegative(),
  coverageFactor: z.number().positive(),
  unit,
  degreesOfFreedom: z.number().positive().optional(),
  fromCelsius,
  source,
});
const Standard = z.strictObject({
  kind: z.literal("standard"),
  standard: z.number().nonnegative(),
  unit,
  degreesOfFreedom: z.number().positive().optional(),
  fromCelsius,
  source,
});
const Zero = z.strictObject({ kind: z.literal("zero"), reason: source });
const stated = [Rectangular, Expanded, Standard, Zero] as const;

/**
 * One input of the budget. `relative` is a fraction of the emf it acts on (0.0002 = 0.02 %).
 * A line that is absent in truth is written down as `zero` with its reason, never left out.
 */
export const UncertaintyInput = z.discriminatedUnion("kind", stated);
export type UncertaintyInput = z.infer<typeof UncertaintyInput>;

/**
 * A furnace's figure may also be given at each temperature it was characterised at: a half-width and how well it is
 * known. At a setpoint the larger of the two temperatures about it acts; beyond them the evidence is refused.
 */
export const FurnaceInput = z.discriminatedUnion("kind", [
  ...stated,
  z.strictObject({
    kind: z.literal("by-temperature"),
    at: z
      .array(
        z.strictObject({
          celsius: z.number(),
          halfWidthCelsius: z.number().nonnegative(),
          /** u of the half-width. */
          standardCelsius: z.number().nonnegative(),
        }),
      )
      .min(1),
    source,
  }),
]);
export type FurnaceInput = z.infer<typeof FurnaceInput>;

/**
 * Inhomogeneity may also be a share of the sensor's own tolerance at the temperature, as a rectangle's
 * half-width: the rule for sensors that were not investigated ("20 % rule", 0.2 of class 2).
 */
export const InhomogeneityInput = z.discriminatedUnion("kind", [
  ...stated,
  z.strictObject({
    kind: z.literal("tolerance-share"),
    share: z.number().positive().max(1),
    toleranceClass: z.enum(["1", "2", "3"]),
    source,
  }),
]);
export type InhomogeneityInput = z.infer<typeof InhomogeneityInput>;

/**
 * Repeatability may also come from the window's own readings, as the spread of block means: successive
 * scans are correlated, the means of blocks of at least one control period are not.
 */
export const RepeatabilityInput = z.discriminatedUnion("kind", [
  ...stated,
  z.strictObject({ kind: z.literal("block-means"), blockSeconds: z.number().positive(), source }),
]);
export type RepeatabilityInput = z.infer<typeof RepeatabilityInput>;

/** Between the points of a certificate the error may also be bounded by the points' own second differences. */
export const InterpolationInput = z.discriminatedUnion("kind", [
  ...stated,
  z.strictObject({ kind: z.literal("second-differences"), source }),
]);
export type InterpolationInput = z.infer<typeof InterpolationInput>;

/** How fast the error (indication − t) changes, and within what that is known: °C. */
const Rate = z.strictObject({ rateCelsius: z.number(), halfWidthCelsius: z.number().nonnegative() });

/**
 * Drift may also come from rates per year and per hour of use: from the day of the certificate to that of the run,
 * and the hours used since. Corrected, the expected drift is taken off and its half-width stays; else both stay.
 */
export const DriftInput = z.discriminatedUnion("kind", [
  ...stated,
  z.strictObject({
    kind: z.literal("by-use"),
    perYear: Rate,
    perHour: Rate,
    hours: z.number().nonnegative(),
    isCorrected: z.boolean(),
    source,
  }),
]);
export type DriftInput = z.infer<typeof DriftInput>;
