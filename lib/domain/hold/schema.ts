import { z } from "zod";
import { Choices, PublicUrl, QuestionText } from "../question/schema";
import { lines, requiredLines } from "../typed-text";
import { holdOutcomes } from "./labels";

export const PlaceHoldInput = z.strictObject({
  orderNumber: z.string().min(1),
  /** Empty: the whole order. */
  tag: z.string().trim().default(""),
  kind: z.enum(["condition", "question"], "Choose why it stands still."),
  reason: requiredLines("Write why it stands still.", 1000),
  /** Left out: nothing is asked. */
  question: z.strictObject({ text: QuestionText, choices: Choices }).optional(),
  publicUrl: PublicUrl,
});

export const ReleaseHoldInput = z.strictObject({
  holdId: z.uuid(),
  outcome: z.enum(holdOutcomes, "Choose how it goes on."),
  reason: requiredLines("Write why the hold ends.", 1000),
  disclaimer: lines(1000).default(""),
  /** The customer sends another sensor in the place of this one. Ticked in a form, or said. */
  awaitsAnother: z
    .union([z.boolean(), z.literal("yes")])
    .default(false)
    .transform((value) => value !== false),
});
