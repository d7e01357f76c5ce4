import { interpolate } from "../comparison/interpolate";
import { polynomial } from "../number/polynomial";
import { found, type Outcome, refused } from "../outcome";

/** A calibration and measurement capability as a schedule of accreditation may state it: expanded uncertainty in °C. */
export type StatedCapability =
  | { readonly kind: "constant"; readonly expandedCelsius: number }
  /** Σ cᵢ·tⁱ, t in °C. */
  | { readonly kind: "polynomial"; readonly coefficientsCelsius: readonly number[] }
  /** a + b·|t|, t in °C. */
  | { readonly kind: "proportional"; readonly constantCelsius: number; readonly perCelsius: number }
  /** At ascending temperatures; straight lines between. */
  | {
      readonly kind: "table";
      readonly points: readonly { readonly celsius: number; readonly expandedCelsius: number }[];
    };

/**
 * CMC at a temperature, from a value, a formula or a table, no open intervals (ILAC-P14:09/2020, 4; clause from memory).
 * Symbols: `celsius` = t in °C; the result is U at the coverage of the scope, °C. Polynomial by Horner's scheme; a table
 * linear between its points. Refused: t that is not finite, a table that does not reach t or has no points
 * (`outside-range`, `too-few`), and a value that is not above zero (`outside-range`): such a capability states nothing.
 */
export function capabilityAt(capability: StatedCapability, celsius: number): Outcome<number> {
  if (!Number.isFinite(celsius)) return refused("not-finite", `t = ${celsius} is not a temperature`);
  const stated = statedAt(capability, celsius);
  if (!stated.ok) return stated;
  if (!(stated.value > 0 && Number.isFinite(stated.value))) {
    return refused(
      "outside-range",
      `the capability at ${celsius} °C is ${stated.value} °C; it must be above zero`,
    );
  }
  return stated;
}

function statedAt(capability: StatedCapability, t: number): Outcome<number> {
  switch (capability.kind) {
    case "constant":
      return found(capability.expandedCelsius);
    case "polynomial":
      return found(polynomial(capability.coefficientsCelsius, t));
    case "proportional":
      return found(capability.constantCelsius + capability.perCelsius * Math.abs(t));
    case "table": {
      const nodes = capability.points.map(({ celsius: x, expandedCelsius: y }) => ({ x, y }));
      const [first, last] = [nodes[0], nodes.at(-1)];
      if (first === undefined || last === undefined) return refused("too-few", "the table has no points");
      if (t < first.x || t > last.x) {
        return refused("outside-range", `the table reaches from ${first.x} °C to ${last.x} °C, not ${t} °C`);
      }
      return found(interpolate(nodes, t).value);
    }
  }
}
