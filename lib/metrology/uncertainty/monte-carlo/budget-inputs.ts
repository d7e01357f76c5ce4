import { SQRT_2, SQRT_3 } from "../../number/constants";
import type { CombinableEffect } from "../combine";
import type { Distribution } from "../distribution";
import type { MonteCarloInput } from "./drawn-input";

/** A line of a budget: its signed effect in the result's unit, ν, and what its distribution is called. */
export type BudgetLine = CombinableEffect & {
  readonly distribution: "normal" | "rectangular" | "triangular" | "arcsine" | "none";
};

/**
 * The lines of a budget as inputs of `linearSampler`: distributions of standard uncertainty 1, with the line's effect as
 * sensitivity. A normal line with finite ν is Student's t with the effect as its scale (JCGM 101:2008, 6.4.9.2); the other
 * distributions have no ν there. "none" draws nothing. Pure numbers but for the effects; no error cases.
 */
export function budgetInputs(lines: readonly BudgetLine[]): MonteCarloInput[] {
  return lines.map((line) => ({ sensitivity: line.effect, distribution: ofUncertaintyOne(line) }));
}

function ofUncertaintyOne({ distribution, degreesOfFreedom }: BudgetLine): Distribution {
  switch (distribution) {
    case "rectangular":
      return { kind: "rectangular", halfWidth: SQRT_3 };
    case "triangular":
      return { kind: "triangular", halfWidth: SQRT_2 * SQRT_3 };
    case "arcsine":
      return { kind: "arcsine", halfWidth: SQRT_2 };
    case "none":
      return { kind: "none" };
    case "normal":
      return degreesOfFreedom === null
        ? { kind: "normal", standardDeviation: 1 }
        : { kind: "student", scale: 1, degreesOfFreedom };
  }
}
