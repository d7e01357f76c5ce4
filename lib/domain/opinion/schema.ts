import { z } from "zod";
import { printedText } from "../certificate/printable/printed-text";
import { lines, requiredLines } from "../typed-text";

/** ISO/IEC 17025 7.8.7: an opinion with what it rests on. An empty text takes back what was written before. */
export const OpinionInput = z.strictObject({
  runId: z.uuid(),
  evaluationId: z.uuid(),
  sensorId: z.uuid("Choose the sensor."),
  text: requiredLines("Write the opinion as it is to be printed.", 2000).superRefine(printedText),
  basis: requiredLines("Write what it rests on: it is printed with the opinion.", 1000).superRefine(
    printedText,
  ),
});

export const OpinionTakenBack = z.strictObject({
  runId: z.uuid(),
  evaluationId: z.uuid(),
  sensorId: z.uuid(),
  reason: lines(1000).pipe(z.string().min(1, "Write why it is taken back.")),
});
