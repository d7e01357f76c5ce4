import { SQRT_3 } from "@/lib/metrology/number/constants";
import type { CorrectionCurve } from "@/lib/metrology/standard/correction-curve";
import type { Mounted, Reference } from "./bench";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import { curveOf } from "./reference-correction";
import { type ReferenceDrift, referenceDrift } from "./reference-drift";
import type { Evidence } from "./schema";
import type { UncertaintyInput } from "./uncertainty-input";

/** What a reference's certificate and history come to, found once for all its readings. */
export type PreparedReference = {
  readonly curve: CorrectionCurve;
  readonly drift: ReferenceDrift;
};

export function prepareReference(
  { item, itemPath, reference }: Mounted<Reference>,
  evidence: Pick<Evidence, "scans">,
): EvidenceOutcome<PreparedReference> {
  const curve = curveOf(item, reference);
  if (!curve.ok) return missing(`${itemPath}.correction`, `${curve.problem.message}.`);
  const drift = referenceDrift(item, itemPath, evidence);
  return drift.ok ? got({ curve: curve.value, drift: drift.value }) : drift;
}

/** The interpolation as stated, or the bound by the points' second differences at a temperature. */
export function interpolationAt(
  { interpolation }: Reference,
  { curve }: PreparedReference,
  celsius: number,
): UncertaintyInput {
  if (interpolation.kind !== "second-differences") return interpolation;
  return {
    kind: "rectangular",
    halfWidth: SQRT_3 * curve.interpolationMicrovolt(celsius),
    unit: "microvolt",
    source: `${interpolation.source}: bounded by the second differences of the certificate's points`,
  };
}
