import { z } from "zod";
import { ReferenceType } from "../evidence/schema";

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

/** The figures of one piece of equipment, stored as JSON text beside it. */
export const Particulars = z.discriminatedUnion("kind", [
  ReferenceParticulars,
  VoltmeterParticulars,
  ScannerParticulars,
  JunctionParticulars,
]);
export type Particulars = z.infer<typeof Particulars>;
export type ParticularsOf<K extends Particulars["kind"]> = Extract<Particulars, { kind: K }>;
