import { tolerance } from "@/lib/metrology/conformity/tolerance";
import { found, type Outcome, refused } from "@/lib/metrology/outcome";
import type { TypeLetter } from "./schema";
import type { InhomogeneityInput, UncertaintyInput } from "./uncertainty-input";

/** The input as it acts at a temperature: below the one it acts from it is zero, and says so. */
export function actingAt(input: UncertaintyInput, celsius: number): UncertaintyInput {
  if (input.kind === "zero" || input.fromCelsius === undefined || celsius >= input.fromCelsius) return input;
  return { kind: "zero", reason: `acts from ${input.fromCelsius} °C only: ${input.source}` };
}

/** A share of the tolerance becomes the half-width it is at the temperature; all else stays. */
export function inhomogeneityAt(
  input: InhomogeneityInput,
  type: TypeLetter,
  celsius: number,
): Outcome<UncertaintyInput> {
  if (input.kind !== "tolerance-share") return found(actingAt(input, celsius));
  const limit = tolerance(type, input.toleranceClass, celsius);
  if (limit.kind === "not-defined") return refused("outside-range", limit.reason);
  return found({
    kind: "rectangular",
    halfWidth: input.share * limit.celsius,
    unit: "celsius",
    source: input.source,
  });
}
