import { found, type Outcome, refused } from "../outcome";

export type ReportedUncertainty = {
  readonly expanded: number;
  /** Which of the two is reported. Equal: the computed one. */
  readonly origin: "computed" | "capability";
};

/**
 * U reported = max(U, CMC): a certificate under accreditation states no U smaller than the laboratory's calibration
 * and measurement capability at that point (ILAC-P14:09/2020, 5.4; clause from memory).
 * Symbols: `expanded` = U, `capability` = CMC at the point, both expanded with k for 95.45 % and in one unit; null where
 * the point lies outside the accredited scope and no CMC exists.
 * Range: both above 0 and finite; anything else is refused by name, never skipped.
 */
export function applyCmc(expanded: number, capability: number | null): Outcome<ReportedUncertainty> {
  if (!Number.isFinite(expanded)) return refused("not-finite", `U = ${expanded} is not a number`);
  if (!(expanded > 0)) return refused("outside-range", `U = ${expanded}: an uncertainty must be above zero`);
  if (capability === null) return found({ expanded, origin: "computed" });
  if (!Number.isFinite(capability)) return refused("not-finite", `CMC = ${capability} is not a number`);
  if (!(capability > 0)) {
    return refused("outside-range", `CMC = ${capability}: a capability must be above zero`);
  }
  return found(
    expanded >= capability
      ? { expanded, origin: "computed" }
      : { expanded: capability, origin: "capability" },
  );
}
