import { z } from "zod";
import { seenWhole } from "../typed-text";
import { gateCodes } from "./codes";

const run = z.string().min(1).max(40);
/** A number a form left empty arrives undefined, an unreadable one as NaN, which zod refuses with this sentence. */
const figure = (message: string) => z.number(message);
const emf = (message: string) => figure(message).min(-1_000_000).max(1_000_000);
const junctionCelsius = figure("Write what the thermometer reads, such as 0.01.")
  .min(-5, "A reference junction stands between -5 and 60 °C.")
  .max(60, "A reference junction stands between -5 and 60 °C.");

/** The checks of the bench on the day; what is left out is not recorded, and the last of each counts. */
export const RecordBenchChecksInput = z
  .strictObject({
    run,
    warmUpHours: figure("Write the hours, such as 1.5.")
      .min(0, "Hours cannot be negative.")
      .max(10_000)
      .optional(),
    shortedZeroMicrovolt: emf("Write the reading in µV, such as 0.2.").optional(),
    voltagePoint: z
      .strictObject({
        appliedMicrovolt: emf("Write the voltage applied in µV, such as 10000."),
        readMicrovolt: emf("Write what the voltmeter reads in µV."),
      })
      .optional(),
    channels: z
      .array(
        z.strictObject({
          channel: z.string().min(1).max(40),
          /** Left out: not shorted this time. */
          microvolt: emf("Write the reading in µV, such as 0.2.").optional(),
        }),
      )
      .max(80)
      .default([]),
    junctions: z
      .array(
        z.strictObject({
          junction: z.string().min(1).max(40),
          thermometer: z.string().trim().max(40).default(""),
          /** Left out: not checked this time. */
          thermometerCelsius: junctionCelsius.optional(),
        }),
      )
      .max(40)
      .default([]),
  })
  .refine(
    (checks) =>
      checks.warmUpHours !== undefined ||
      checks.shortedZeroMicrovolt !== undefined ||
      checks.voltagePoint !== undefined ||
      checks.channels.some(({ microvolt }) => microvolt !== undefined) ||
      checks.junctions.some(({ thermometerCelsius }) => thermometerCelsius !== undefined),
    { path: ["warmUpHours"], message: "Record at least one of the checks." },
  );
export type RecordBenchChecksInput = z.output<typeof RecordBenchChecksInput>;

export const OverrideGateInput = z.strictObject({
  run,
  code: z.enum(gateCodes, "The gate knows no such rule. Reload the page."),
  /** Those it is said of; none = the whole run. */
  subjects: z.array(z.string().min(1).max(80)).max(80).default([]),
  reason: z.string().trim().max(600, "At most 600 characters.").superRefine(seenWhole),
});

export const PassGateInput = z.strictObject({ run });
