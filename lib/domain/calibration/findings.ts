import { z } from "zod";
import { AmbientFindings } from "./ambient-findings";
import { coverageFactor, expanded, figure, note, rising } from "./certificate-figures";
import { LeadFindings } from "./lead-findings";
import { ThermometerFindings } from "./thermometer-findings";

/** A certificate that prints an equation instead of points. Σ cᵢ·tⁱ in µV, t in °C. */
const Equation = z
  .strictObject({
    /** polynomial: of the deviation E_ref − E_table; coefficients: of the emf itself. */
    kind: z.enum(["polynomial", "coefficients"], "Choose what the equation gives."),
    /** In rising powers, µV/°Cⁱ; objects, so that a refusal names the line of the form. */
    terms: z
      .array(z.strictObject({ coefficient: figure }))
      .min(1, "Write at least one coefficient, that of t⁰ first.")
      .max(12, "At most 12 coefficients."),
    fromCelsius: z.number("Write where the equation begins to hold, such as 0.").min(-270).max(1800),
    toCelsius: z.number("Write where the equation ends, such as 1100.").min(-270).max(1800),
  })
  .refine(({ fromCelsius, toCelsius }) => fromCelsius < toCelsius, {
    path: ["toCelsius"],
    message: "Must lie above where it begins.",
  });

export const ReferenceFindings = z
  .strictObject({
    kind: z.literal("reference"),
    /** E_ref − E_table, at the certificate's temperatures. Empty where the certificate prints an equation. */
    points: z
      .array(z.strictObject({ celsius: figure.min(-270).max(1800), deviationMicrovolt: figure }))
      .max(60)
      .refine(
        (points) => rising(points.map((point) => point.celsius)),
        "Write the points from cold to hot, each once.",
      ),
    equation: Equation.optional(),
    /** Only for a certificate with one point: how far each side of it the value is taken to hold. */
    singlePointReachCelsius: z.number("Write a number, such as 20.").positive().max(100).optional(),
    expanded,
    coverageFactor,
    unit: z.enum(["celsius", "microvolt"], "Choose the unit of U."),
    degreesOfFreedom: z.number("Write a number.").positive().optional(),
    note,
  })
  .refine(({ points, equation }) => points.length > 0 || equation !== undefined, {
    path: ["points"],
    message: "Write at least one point of the certificate, or its equation.",
  })
  .refine(({ points, equation }) => points.length === 0 || equation === undefined, {
    path: ["equation.kind"],
    message: "Write the points or the equation, not both: two sources of one value would disagree.",
  });

export const VoltmeterFindings = z.strictObject({
  kind: z.literal("voltmeter"),
  /** To be added to the indication; none = the certificate found none worth applying. */
  corrections: z
    .array(z.strictObject({ microvolt: figure, correctionMicrovolt: figure }))
    .max(60)
    .refine(
      (points) => rising(points.map((point) => point.microvolt)),
      "Write the corrections from low to high, each indication once.",
    ),
  /** Expanded uncertainty of the corrections, µV, the largest over the range used. */
  expandedMicrovolt: expanded,
  coverageFactor,
  note,
});

export const ScannerFindings = z.strictObject({
  kind: z.literal("scanner"),
  /** Largest parasitic emf found on any channel, µV. */
  parasiticHalfWidthMicrovolt: z
    .number("Write a number, such as 0.2.")
    .nonnegative("Write its size, without sign."),
  note,
});

export const JunctionFindings = z.strictObject({
  kind: z.literal("junction"),
  celsius: figure.min(-5, "Between -5 and 60 °C.").max(60, "Between -5 and 60 °C."),
  expandedCelsius: expanded,
  coverageFactor,
  note,
});

/** What a certificate found, stored as JSON text with the calibration; its kind is that of the equipment. */
export const Findings = z.discriminatedUnion("kind", [
  ReferenceFindings,
  ThermometerFindings,
  VoltmeterFindings,
  ScannerFindings,
  JunctionFindings,
  LeadFindings,
  AmbientFindings,
]);
export type Findings = z.infer<typeof Findings>;
export type FindingsOf<K extends Findings["kind"]> = Extract<Findings, { kind: K }>;
