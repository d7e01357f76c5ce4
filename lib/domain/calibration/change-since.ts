import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import type { ParticularsOf } from "../equipment/particulars";
import { deviationOf } from "../evidence/reference-correction";
import { rangeOfFindings } from "./calibrated-range";
import { certifiedTemperatures } from "./certified-temperatures";
import type { FindingsOf } from "./findings";
import { referenceCorrectionOf } from "./reference-correction-of";

/**
 * How far a reference has moved since its certificate before: the largest difference of the two deviations, in °C, at
 * temperatures of the new one that the old one covers. Null where they have none in common.
 */
export const changeSince = (
  earlier: FindingsOf<"reference">,
  later: FindingsOf<"reference">,
  type: ParticularsOf<"reference">["type"],
): { readonly celsius: number; readonly at: number } | null => {
  const reference = referenceFunctions[type];
  const range = rangeOfFindings(earlier);
  const before = deviationOf(referenceCorrectionOf(earlier), reference);
  const after = deviationOf(referenceCorrectionOf(later), reference);
  const changes = certifiedTemperatures(later)
    .filter((at) => range !== null && at >= range.fromCelsius && at <= range.toCelsius)
    .flatMap((at) => {
      const slope = seebeck(reference, at);
      const celsius = slope.ok ? Math.abs(after(at).value - before(at).value) / slope.value : Number.NaN;
      return Number.isFinite(celsius) ? [{ celsius, at }] : [];
    });
  return changes.reduce<{ celsius: number; at: number } | null>(
    (largest, one) => (largest === null || one.celsius > largest.celsius ? one : largest),
    null,
  );
};
