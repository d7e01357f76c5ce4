import { z } from "zod";
import { day, lines, optionalLine, requiredLine } from "../typed-text";
import { checkKeys } from "./acceptance-check";
import { documentLimitBytes } from "./document-type";
import { Findings } from "./findings";
import { Parents } from "./parent";
import { routes } from "./types";

const bytes = z
  .custom<Uint8Array>((value) => value instanceof Uint8Array, "The file did not arrive. Choose it again.")
  .refine((value) => value.length > 0, "The file is empty.")
  .refine(
    (value) => value.length <= documentLimitBytes,
    "The file is larger than 4 MB: choose a smaller one.",
  );

export const DocumentInput = z.strictObject({
  fileName: requiredLine("The file has no name.", 200),
  bytes,
});

const celsius = z
  .number("Write a number, such as 300.")
  .min(-270, "Between -270 and 3000 °C.")
  .max(3000, "Between -270 and 3000 °C.")
  .optional();

export const CalibrationInput = z
  .strictObject({
    equipmentId: z.uuid(),
    certificate: requiredLine("Write the certificate's number.", 120),
    /** As the certificate states it, not as our record does: a second person compares the two. */
    itemSerial: requiredLine("Write the serial number that the certificate states.", 120),
    /** The name of a provider on record, or the laboratory's own for an in-house calibration. */
    issuer: requiredLine("Choose who issued it.", 200),
    accreditation: optionalLine(200),
    route: z.enum(routes, "Choose how it reaches the SI."),
    justification: lines(1000).default(""),
    performedOn: day,
    dueOn: day,
    scale: optionalLine(80),
    conditions: lines(1000).default(""),
    traceabilityStatement: lines(2000).default(""),
    fromCelsius: celsius,
    toCelsius: celsius,
    findings: Findings,
    parents: Parents.default([]),
    /** A file that comes with the form, or a digital certificate that was read before. */
    document: z
      .discriminatedUnion("kind", [
        DocumentInput.extend({ kind: z.literal("file") }),
        z.strictObject({
          kind: z.literal("digital"),
          documentId: z.uuid(),
          /** Which of the tables that the file offers. */
          offer: z.int().min(0).default(0),
        }),
      ])
      .nullable()
      .default(null),
    /** Why a value differs from what the digital certificate says, by the field's name. */
    reasons: z.record(z.string().max(80), z.string().trim().max(400, "At most 400 characters.")).default({}),
  })
  .refine((input) => input.dueOn > input.performedOn, {
    path: ["dueOn"],
    message: "The due day comes after the day it was performed.",
  })
  .refine(
    ({ fromCelsius, toCelsius }) =>
      fromCelsius === undefined || toCelsius === undefined || fromCelsius < toCelsius,
    { path: ["toCelsius"], message: "Must lie above where it begins." },
  );
export type CalibrationInput = z.output<typeof CalibrationInput>;

export const DecideCalibrationInput = z.strictObject({
  id: z.uuid(),
  decision: z.enum(["accepted", "rejected"], "Choose whether it may be used."),
  /** The checks the person looked at and agrees with. */
  confirmed: z.array(z.enum(checkKeys)).max(checkKeys.length).default([]),
  reason: lines(1000).default(""),
});

export const ReceiveDigitalInput = z.strictObject({
  equipmentId: z.uuid(),
  file: z
    .union([DocumentInput, z.null()])
    .refine((file) => file !== null, "Choose the certificate’s XML file."),
  /** Where the published schemas lie on this server; null: only our own rules are applied, and that is said. */
  schemaFolder: z.string().nullable(),
});

export const AdoptCertificateInput = z.strictObject({
  equipmentId: z.uuid(),
  certificate: requiredLine("Choose the certificate.", 40),
  dueOn: day,
});
