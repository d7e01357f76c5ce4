import type { EquipmentCandidate } from "./load-candidates";

/** Why a piece of equipment cannot be used on a day, or null. A scanner and a junction may stand without a certificate. */
export const equipmentProblem = (
  equipment: EquipmentCandidate | null,
  kind: EquipmentCandidate["kind"],
  day: string,
): string | null => {
  if (!equipment || equipment.kind !== kind) return `Choose a ${kind} that is recorded under Standards.`;
  if (equipment.state !== "in-service")
    return `${equipment.tag} is ${equipment.state}. Choose another, or put it back in service first.`;
  const { calibration } = equipment;
  if (!calibration)
    return kind === "scanner" || kind === "junction"
      ? null
      : `${equipment.tag} has no calibration on ${day}. Record its certificate under Standards, or choose another.`;
  if (calibration.dueOn < day)
    return `The calibration of ${equipment.tag} was due on ${calibration.dueOn}. Record its new certificate, or choose another.`;
  return null;
};
