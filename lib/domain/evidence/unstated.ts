import type { Evidence } from "./schema";

/** What is not said anywhere stands in the budget as zero, with the reason that it was not said. */
export type Unstated = Pick<
  Evidence,
  "heaterPickup" | "stability" | "correlation" | "comparison" | "coverage"
> & { readonly line: { readonly kind: "zero"; readonly reason: string } };

/**
 * Everything version 1 did not know, as it then was: lines zero, no correlation between the stages, several
 * references one observation, the emf carried by its slope alone, k by Student.
 */
export function unstated(reason: string): Unstated {
  const line = { kind: "zero", reason } as const;
  const neglected = {
    coefficient: 0,
    reason: `${reason}; leaving it out makes U larger, never smaller`,
  };
  const oneObservation = { coefficient: 1, reason: `${reason}: several references count as one observation` };
  return {
    line,
    heaterPickup: line,
    stability: line,
    correlation: {
      voltmeter: neglected,
      junction: neglected,
      references: { calibration: oneObservation, drift: oneObservation, own: oneObservation },
    },
    comparison: { zero: { kind: "none", reason }, carryOrder: 1 },
    coverage: "student",
  };
}
