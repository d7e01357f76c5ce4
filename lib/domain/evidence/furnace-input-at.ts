import { widenedHalfWidth } from "@/lib/metrology/uniformity/widened-half-width";
import type { FurnaceInput, UncertaintyInput } from "./uncertainty-input";

type ByTemperature = Extract<FurnaceInput, { kind: "by-temperature" }>;

/** The characterised temperatures that bound a setpoint: one where it is one of them, none beyond the first or the last. */
export function characterisedAbout(at: ByTemperature["at"], celsius: number): ByTemperature["at"] {
  const same = at.filter((one) => one.celsius === celsius);
  if (same.length > 0) return same;
  const below = at.filter((one) => one.celsius < celsius);
  const above = at.filter((one) => one.celsius > celsius);
  if (below.length === 0 || above.length === 0) return [];
  const nearest = (side: ByTemperature["at"]) =>
    side.reduce((best, one) =>
      Math.abs(one.celsius - celsius) < Math.abs(best.celsius - celsius) ? one : best,
    );
  return [nearest(below), nearest(above)];
}

/**
 * A furnace's figure as it acts at a setpoint: the larger of those about it, widened by how well it is known. Nothing is
 * interpolated: a profile need not change evenly between two temperatures. Beyond them all are looked at; no result comes
 * of that, as `checkCharacterised` refuses it.
 */
export function furnaceInputAt(input: FurnaceInput, celsius: number): UncertaintyInput {
  if (input.kind !== "by-temperature") return input;
  const about = characterisedAbout(input.at, celsius);
  const widened = (about.length > 0 ? about : input.at).map((one) => ({
    celsius: one.celsius,
    halfWidth: widenedHalfWidth(one.halfWidthCelsius, one.standardCelsius),
  }));
  const largest = widened.reduce((best, one) => (one.halfWidth > best.halfWidth ? one : best));
  const source = `${input.source}; as found at ${largest.celsius} °C`;
  return largest.halfWidth === 0
    ? { kind: "zero", reason: source }
    : { kind: "rectangular", halfWidth: largest.halfWidth, unit: "celsius", source };
}
