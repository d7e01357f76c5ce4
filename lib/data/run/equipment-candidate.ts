import type { CalibratedKind } from "@/lib/domain/equipment/types";
import type { EquipmentCandidate, ReferenceCandidate } from "@/lib/domain/run/load-candidates";
import type { Standard } from "./load-standards";

/** A piece of equipment as the rules of a load see it. */
export const equipmentCandidate = (
  standard: Pick<Standard<CalibratedKind>, "equipment" | "use"> | null,
): EquipmentCandidate | null =>
  standard && {
    id: standard.equipment.id,
    tag: standard.equipment.tag,
    kind: standard.equipment.kind,
    state: standard.equipment.state,
    ...standard.use,
  };

/** A reference, with where its certificate holds. */
export const referenceCandidate = (standard: Standard<"reference"> | null): ReferenceCandidate | null => {
  const base = equipmentCandidate(standard);
  if (!standard || !base) return null;
  const { type, protection } = standard.equipment.particulars;
  return { ...base, type, protection, range: standard.range };
};
