import { z } from "zod";
import { seenWhole } from "../typed-text";

const runNumber = z.string().min(1).max(40);
const tag = z.string().min(1).max(40);
/** Reasons are read by whoever signs, audits or carries on. */
const reason = z
  .string()
  .trim()
  .min(10, "Say why, in a sentence.")
  .max(1000, "At most 1000 characters.")
  .superRefine(seenWhole);

export const AuthoriseRepeatInput = z.strictObject({ run: runNumber, sensor: tag, reason });
export const AbandonRunInput = z.strictObject({
  run: runNumber,
  version: z.coerce.number().int().min(1),
  reason,
});

export const LeaveReviewInput = z.strictObject({
  runId: z.uuid(),
  evaluationId: z.uuid(),
  sensorId: z.uuid("Choose the sensor."),
  results: z.enum(["put-back", "kept"], "Say what becomes of the results."),
  reason,
});

const figure = (message: string) =>
  z
    .string(message)
    .trim()
    .transform((typed) => Number(typed.replace(",", ".") || Number.NaN))
    .pipe(z.number(message));

export const AnnealInput = z.strictObject({
  sensor: tag,
  celsius: figure("Write the temperature in °C, such as 1100.").pipe(
    z
      .number()
      .min(100, "Annealing is between 100 and 1500 °C here.")
      .max(1500, "Annealing is between 100 and 1500 °C here."),
  ),
  hours: figure("Write the hours, such as 2.").pipe(
    z.number().positive("It took longer than nothing.").max(200, "At most 200 h."),
  ),
  manner: z
    .string()
    .trim()
    .min(5, "Say how: in a tube furnace or by current, in what gas, how it cooled.")
    .max(300, "At most 300 characters.")
    .superRefine(seenWhole),
  performedOn: z.iso.date("Choose the day."),
});
