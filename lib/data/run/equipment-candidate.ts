import { referenceCorrectionOf } from "@/lib/domain/calibration/reference-correction-of";
import type { Equipment } from "@/lib/domain/equipment/types";
import { certifiedRange } from "@/lib/domain/evidence/reference-correction";
import type { EquipmentCandidate, ReferenceCandidate } from "@/lib/domain/run/load-candidates";
import type { Standard } from "./load-standards";

/** A piece of equipment as the rules of a load see it. */
export const equipmentCandidate = (
  standard: { readonly equipment: Equipment; readonly calibration: EquipmentCandidate["calibration"] } | null,
): EquipmentCandidate | null =>
  standard && {
    id: standard.equipment.id,
    tag: standard.equipment.tag,
    kind: standard.equipment.kind,
    state: standard.equipment.state,
    calibration: standard.calibration,
  };

const rangeOf = ({ calibration }: Standard<"reference">): ReferenceCandidate["range"] =>
  calibration ? certifiedRange(referenceCorrectionOf(calibration.findings)) : null;

/** A reference, with where its certificate holds. */
export const referenceCandidate = (standard: Standard<"reference"> | null): ReferenceCandidate | null => {
  const base = equipmentCandidate(standard);
  if (!standard || !base) return null;
  const { type, protection } = standard.equipment.particulars;
  return { ...base, type, protection, range: rangeOf(standard) };
};
