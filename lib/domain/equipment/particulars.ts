import { z } from "zod";
import { ReferenceType, TypeLetter } from "../evidence/schema";

/** A figure that may be nought but never negative, as an operator types it. */
const size = z
  .number("Write a number, such as 0.25.")
  .nonnegative("This is a half-width or a size: it cannot be negative.");

/** What the figures beside it rest on: a half-width without its reason is a guess. */
const basis = z
  .string()
  .trim()
  .min(1, "Say what these figures rest on, such as its calibration history.")
  .max(300, "At most 300 characters.");

export const protections = ["bare-wire", "alumina-sheath", "metal-sheath", "other"] as const;

/** A reference thermocouple. Between two calibrations it drifts; along its wires it is not the same everywhere. */
export const ReferenceParticulars = z.strictObject({
  kind: z.literal("reference"),
  type: ReferenceType,
  protection: z.enum(protections, "Choose what stands about the wires."),
  driftHalfWidthCelsius: size,
  /** Fraction of the emf: 0.0002 is 0.02 %. */
  inhomogeneityRelativeHalfWidth: size.max(0.05, "A fraction of the emf: 0.0002 is 0.02 %."),
  /** Of the certificate's values between its points, where it does not say so itself. */
  interpolationHalfWidthCelsius: size.optional(),
  basis,
});

export const VoltmeterParticulars = z.strictObject({
  kind: z.literal("voltmeter"),
  driftHalfWidthMicrovolt: size,
  /** One step of the last digit on the range used. */
  resolutionMicrovolt: size,
  basis,
});

export const ScannerParticulars = z.strictObject({
  kind: z.literal("scanner"),
  parasiticHalfWidthMicrovolt: size,
  basis,
});

export const JunctionParticulars = z.strictObject({
  kind: z.literal("junction"),
  celsius: z
    .number("Write a number, such as 0.")
    .min(-5, "A reference junction stands between -5 and 60 °C.")
    .max(60, "A reference junction stands between -5 and 60 °C."),
  halfWidthCelsius: size,
  /** For a block of junctions: how far one channel's may be from the block's thermometer. */
  spreadHalfWidthCelsius: size.optional(),
  /** Junctions that name the same block share its thermometer. */
  block: z.string().trim().max(80, "At most 80 characters.").optional(),
  basis,
});

export const platinumElements = ["industrial", "sprt"] as const;

/** A platinum thermometer; its function stands in its certificates. */
export const ThermometerParticulars = z.strictObject({
  kind: z.literal("thermometer"),
  element: z.enum(platinumElements, "Choose what kind of thermometer it is."),
  driftHalfWidthCelsius: size,
  basis,
});

/** What tells the temperature and the humidity of the room. */
export const AmbientParticulars = z.strictObject({
  kind: z.literal("ambient"),
  driftHalfWidthCelsius: size,
  /** Of relative humidity, in per cent of it; left out where it tells none. */
  driftHalfWidthPercent: size.optional(),
  basis,
});

export const leadForms = ["extension", "compensating"] as const;

/**
 * Extension lead or compensating cable by lot: what it adds between a sensor and its junction, tested over the
 * temperatures its ends may have. Its correction is added to the emf.
 */
export const LeadParticulars = z
  .strictObject({
    kind: z.literal("lead"),
    form: z.enum(leadForms, "Choose what it is."),
    type: TypeLetter,
    class: z.string().trim().min(1, "Write its class, such as 1.").max(40, "At most 40 characters."),
    lot: z.string().trim().min(1, "Write its lot, as on the reel.").max(80, "At most 80 characters."),
    correctionMicrovolt: z.number("Write a number, such as -2.5.").min(-1000).max(1000),
    halfWidthMicrovolt: size,
    fromCelsius: z.number("Write a number, such as 15.").min(-100).max(250),
    toCelsius: z.number("Write a number, such as 40.").min(-100).max(250),
    basis,
  })
  .refine(({ fromCelsius, toCelsius }) => fromCelsius < toCelsius, {
    path: ["toCelsius"],
    message: "Must lie above where it begins.",
  });

/** A furnace's own figures stand in its furnace record and in its characterisations. */
export const FurnaceParticulars = z.strictObject({ kind: z.literal("furnace") });

/** The figures of one piece of equipment, stored as JSON text beside it. */
export const Particulars = z.discriminatedUnion("kind", [
  ReferenceParticulars,
  ThermometerParticulars,
  VoltmeterParticulars,
  ScannerParticulars,
  JunctionParticulars,
  LeadParticulars,
  AmbientParticulars,
  FurnaceParticulars,
]);
export type Particulars = z.infer<typeof Particulars>;
export type ParticularsOf<K extends Particulars["kind"]> = Extract<Particulars, { kind: K }>;
