import { z } from "zod";
import { capabilityAt } from "@/lib/metrology/reporting/capability-at";

const positive = z.number("Write U in °C.").positive("More than nought.");

/** Formula or table; a constant is written as a number of its own in the evidence file. */
export const CapabilityForm = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("polynomial"),
    /** U in °C = Σ cᵢ·tⁱ, t in °C. */
    coefficientsCelsius: z.array(z.number()).min(1).max(8),
  }),
  /** U in °C = a + b·|t|. */
  z.strictObject({
    kind: z.literal("proportional"),
    constantCelsius: z.number().nonnegative(),
    perCelsius: z.number().nonnegative(),
  }),
  /** Straight lines between. */
  z.strictObject({
    kind: z.literal("table"),
    points: z
      .array(z.strictObject({ celsius: z.number(), expandedCelsius: positive }))
      .min(2, "A table has at least two points.")
      .max(60)
      .refine(
        (points) =>
          points.every(({ celsius }, i) => i === 0 || celsius > (points[i - 1]?.celsius ?? celsius)),
        "Temperatures ascend, each once.",
      ),
  }),
]);
export type CapabilityForm = z.infer<typeof CapabilityForm>;

/** The capability of one line of the scope, as it is stored. */
export const Capability = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("constant"), expandedCelsius: positive }),
  ...CapabilityForm.options,
]);
export type Capability = z.infer<typeof Capability>;

/** A polynomial is looked at in this many steps of its range; at the point used, it is looked at again. */
const steps = 1000;

/** Why this capability does not hold for the whole of a range; null where it does. */
export const capabilityGap = (
  capability: Capability,
  fromCelsius: number,
  toCelsius: number,
): string | null => {
  for (let step = 0; step <= steps; step += 1) {
    const celsius = step === steps ? toCelsius : fromCelsius + ((toCelsius - fromCelsius) * step) / steps;
    const at = capabilityAt(capability, celsius);
    if (!at.ok) return at.problem.message;
  }
  return null;
};
