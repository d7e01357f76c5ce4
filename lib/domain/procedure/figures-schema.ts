import { z } from "zod";
import { Correlation } from "../evidence/schema";

const figure = (message: string) => z.number(message);
const source = z
  .string("Write where the figure comes from.")
  .trim()
  .min(1, "Write where the figure comes from.")
  .max(400, "At most 400 characters.");

/** How a line may be stated in the form; `keep`: as it stands, for what only the whole text can say. */
export const lineKinds = ["standard", "rectangular", "expanded", "zero", "tolerance-share", "keep"] as const;
/** A share is of the sensor's own tolerance, by class. */
export const lineUnits = ["celsius", "microvolt", "relative", "class-1", "class-2", "class-3"] as const;

export const LineFigure = z
  .strictObject({
    place: z.string().max(80),
    kind: z.enum(lineKinds, "Choose how it is stated."),
    value: figure("Write a number.").nonnegative("Not below nought.").nullable(),
    unit: z.enum(lineUnits, "Choose the unit."),
    source: z.string().trim().max(400, "At most 400 characters."),
  })
  .superRefine(({ kind, value, unit, source: reason }, context) => {
    if (kind === "keep") return;
    const say = (path: string, message: string) =>
      context.addIssue({ code: "custom", path: [path], message });
    if (reason === "")
      say(
        "source",
        kind === "zero" ? "Write why nothing stands here." : "Write where the figure comes from.",
      );
    if (kind === "zero") return;
    if (value === null) say("value", "Write a number.");
    if ((kind === "tolerance-share") !== unit.startsWith("class-"))
      say(
        "unit",
        kind === "tolerance-share" ? "Choose the class." : "Choose °C, µV or a fraction of the emf.",
      );
  });
export type LineFigure = z.output<typeof LineFigure>;

export const DeviationFigure = z.strictObject({
  /** For every type alike; `keep`: each type's own stays. */
  rule: z.enum(["keep", "none", "fixed", "f-test", "residuals"], "Choose the rule."),
  degree: z.int("Write a whole number.").min(0, "From 0 to 6.").max(6, "From 0 to 6.").nullable(),
  /** Probability of the F test, or how many times its own standard uncertainty a residual may be. */
  limit: figure("Write a number.").positive("More than nought.").nullable(),
  isThroughZero: z.boolean(),
  method: z.enum(["propagated", "own-plus-common"], "Choose the method."),
});

export const Figures = z.strictObject({
  lines: z.array(LineFigure).max(60),
  correlations: z
    .array(
      z.strictObject({
        place: z.string().max(40),
        coefficient: figure("From 0 to 1.").min(0, "From 0 to 1.").max(1, "From 0 to 1."),
        reason: Correlation.shape.reason,
      }),
    )
    .max(5),
  coverage: z.enum(["student", "dominant", "monte-carlo"], "Choose how k is found."),
  comparison: z.discriminatedUnion("zero", [
    z.strictObject({
      zero: z.literal("none"),
      reason: source,
      carryOrder: z.union([z.literal(1), z.literal(2)]),
    }),
    z.strictObject({
      zero: z.literal("shorted-channel"),
      channel: z.string().trim().min(1, "Write the channel.").max(40, "At most 40 characters."),
      carryOrder: z.union([z.literal(1), z.literal(2)]),
    }),
  ]),
  deviationFunction: DeviationFigure,
});
export type Figures = z.output<typeof Figures>;
