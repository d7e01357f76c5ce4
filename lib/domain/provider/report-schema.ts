import { z } from "zod";
import { day, lines, optionalLine, requiredLine } from "../typed-text";
import { reportUnits } from "./report-results";

/** With the other fields it stays below what a request may bring (10 MiB). */
export const reportFileLimitBytes = 10_000_000;

const normal = (typed: string): string =>
  typed
    .trim()
    .replace(/\u2212/g, "-")
    .replace(",", ".");

const figure = (pattern: RegExp, message: string) =>
  z.string().transform(normal).pipe(z.string().regex(pattern, message));
const signed = /^(-?\d{1,7}(\.\d{1,6})?)?$/;
const positive = /^((?!0+(\.0+)?$)\d{1,7}(\.\d{1,6})?)?$/;

/** A row of the form; where value, U and k are all empty, the provider states nothing at this setpoint. */
const Row = z
  .strictObject({
    orderedCelsius: z.coerce.number(),
    nominalCelsius: figure(signed, "Write it in °C, such as 600 or 600.2."),
    value: figure(signed, "Write it as the certificate does, such as 0.52 or 24905.1."),
    expanded: figure(positive, "Write U in the same unit, greater than 0."),
    coverageFactor: figure(positive, "Write k, such as 2."),
  })
  .superRefine((row, context) => {
    const { value, expanded, coverageFactor, nominalCelsius } = row;
    if (value === "" && expanded === "" && coverageFactor === "") return;
    for (const [name, given] of Object.entries({ value, expanded, coverageFactor, nominalCelsius }))
      if (given === "")
        context.addIssue({
          code: "custom",
          path: [name],
          message: "Write it too, or leave the whole row empty.",
        });
  });

export const RecordReportInput = z.strictObject({
  sensor: z.string().min(1).max(40),
  certificate: requiredLine("Write the number of the provider's certificate.", 120),
  issuedOn: day,
  accreditation: optionalLine(300),
  unit: z.enum(reportUnits, "Say what the certificate states."),
  results: z.array(Row).max(200),
  correction: lines(600).default(""),
  document: z
    .strictObject(
      { fileName: requiredLine("Choose the certificate's file.", 200), bytes: z.instanceof(Uint8Array) },
      "Choose the certificate's file.",
    )
    .refine(({ bytes }) => bytes.byteLength <= reportFileLimitBytes, "The file is larger than 10 MB."),
});
export type RecordReportInput = z.output<typeof RecordReportInput>;

export const DecideReportInput = z.strictObject({
  id: z.uuid(),
  decision: z.enum(["accepted", "rejected"], "Say whether the record agrees with the certificate."),
  reason: lines(600).default(""),
});
