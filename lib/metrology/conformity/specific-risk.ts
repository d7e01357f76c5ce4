import { conformanceProbability, nonconformanceProbability } from "./conformance-probability";

export type SpecificRisk = {
  /** `false-acceptance`: accepted, and the true value lies outside. `false-rejection`: rejected, and it lies inside. */
  readonly kind: "false-acceptance" | "false-rejection";
  readonly probability: number;
};

/**
 * Risk of the statement about this one item, whatever the process it came from: PFA = 1 − p_c where it was accepted,
 * PFR = p_c where it was rejected (JCGM 106:2012, 9.3.2, "specific consumer's / producer's risk"; clause from memory).
 * Symbols and units as in `conformanceProbability`; `isAccepted` is what the statement says. Range 0 to 1; NaN where
 * `conformanceProbability` gives it.
 */
export function specificRisk(
  isAccepted: boolean,
  value: number,
  standardUncertainty: number,
  lower: number,
  upper: number,
  degreesOfFreedom: number | null = null,
): SpecificRisk {
  return isAccepted
    ? {
        kind: "false-acceptance",
        probability: nonconformanceProbability(value, standardUncertainty, lower, upper, degreesOfFreedom),
      }
    : {
        kind: "false-rejection",
        probability: conformanceProbability(value, standardUncertainty, lower, upper, degreesOfFreedom),
      };
}
