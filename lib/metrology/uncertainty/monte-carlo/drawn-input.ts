import { found, type Outcome, refused } from "../../outcome";
import { type Distribution, standardDeviation } from "../distribution";

/** One input of a linear model: its error, centred on zero, and how much the result moves per unit of it (signed). */
export type MonteCarloInput = { readonly sensitivity: number; readonly distribution: Distribution };

/** A distribution of size 1: half-width, standard deviation or scale. */
export type Shape =
  | { readonly kind: "normal" | "rectangular" | "triangular" | "arcsine" }
  | { readonly kind: "trapezoidal"; readonly beta: number }
  | { readonly kind: "student"; readonly degreesOfFreedom: number };

/** What is drawn: a shape of size 1, times a signed amount in the result's unit. */
export type DrawnInput = { readonly shape: Shape; readonly amount: number };

const nothing: DrawnInput = { shape: { kind: "normal" }, amount: 0 };

/**
 * Splits an input into shape and amount = sensitivity × size (JCGM 101:2008, table 1 gives the distributions). The amount
 * is in the result's unit, shape parameters are pure numbers; "none" is an amount of 0.
 *
 * Refuses: a sensitivity or size that is not finite ("not-finite"); a negative size, β outside 0 … 1 and ν not above 0
 * ("outside-range").
 */
export function drawnInput({ sensitivity, distribution }: MonteCarloInput): Outcome<DrawnInput> {
  if (!Number.isFinite(sensitivity)) return refused("not-finite", `Sensitivity ${sensitivity}.`);
  if (distribution.kind === "none") return found(nothing);
  const { size, shape } = split(distribution);
  if (!Number.isFinite(size))
    return refused("not-finite", `A ${distribution.kind} distribution of size ${size}.`);
  if (size < 0) {
    return refused(
      "outside-range",
      `A ${distribution.kind} distribution of size ${size}: it is not negative.`,
    );
  }
  if (shape.kind === "trapezoidal" && !(shape.beta >= 0 && shape.beta <= 1)) {
    return refused("outside-range", `A trapezoid with β = ${shape.beta}: it lies from 0 to 1.`);
  }
  if (shape.kind === "student" && !(shape.degreesOfFreedom > 0)) {
    return refused("outside-range", `Student's t with ${shape.degreesOfFreedom} degrees of freedom.`);
  }
  return found({ shape, amount: sensitivity * size });
}

function split(distribution: Exclude<Distribution, { kind: "none" }>): { size: number; shape: Shape } {
  switch (distribution.kind) {
    case "normal":
      return { size: distribution.standardDeviation, shape: { kind: "normal" } };
    case "student": {
      const { scale, degreesOfFreedom } = distribution;
      return { size: scale, shape: { kind: "student", degreesOfFreedom } };
    }
    case "trapezoidal":
      return { size: distribution.halfWidth, shape: { kind: "trapezoidal", beta: distribution.beta } };
    default:
      return { size: distribution.halfWidth, shape: { kind: distribution.kind } };
  }
}

/**
 * What the GUM takes as the standard uncertainty of a shape of size 1: its standard deviation (`standardDeviation` with the
 * clauses), and for Student's t its scale (JCGM 100:2008, 4.2.3: s/√n, whatever n). A pure number; no error cases.
 */
export function unitUncertainty(shape: Shape): number {
  switch (shape.kind) {
    case "normal":
    case "student":
      return 1;
    case "trapezoidal":
      return standardDeviation({ ...shape, halfWidth: 1 });
    default:
      return standardDeviation({ kind: shape.kind, halfWidth: 1 });
  }
}
