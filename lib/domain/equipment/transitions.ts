import { ok, type Result, refuse } from "../refusal";
import { equipmentStateLabels } from "./labels";
import type { EquipmentState } from "./types";

/**
 * Where equipment may go from where it is, ISO/IEC 17025 6.4.4 and 6.4.9: nothing enters service unverified, and nothing
 * comes back into service without passing `verified` again. The database holds the same table (`guard_equipment_state`).
 */
export const transitions: Readonly<Record<EquipmentState, readonly EquipmentState[]>> = {
  received: ["verified", "under-repair", "retired"],
  verified: ["in-service", "suspect", "under-repair", "retired"],
  "in-service": ["suspect", "under-repair", "retired"],
  suspect: ["verified", "under-repair", "retired"],
  "under-repair": ["verified", "retired"],
  retired: [],
};

/** States for which a verification must stand that nothing has happened since. */
const asksVerification = (state: EquipmentState): boolean => state === "verified" || state === "in-service";

const listed = (states: readonly EquipmentState[]): string =>
  states.map((state) => equipmentStateLabels[state].toLowerCase()).join(", ");

/** One step of its life. `isVerified`: its logbook holds a passed verification, and nothing against it since. */
export const decideTransition = (
  from: EquipmentState,
  to: EquipmentState,
  isVerified: boolean,
): Result<EquipmentState> => {
  if (from === to)
    return refuse("wrong-state", "It is in that state already.", { state: "Choose another state." });
  if (from === "retired")
    return refuse("wrong-state", "Retired equipment does not come back. Record it anew with another tag.");
  if (!transitions[from].includes(to))
    return refuse("wrong-state", "No step is left out. Nothing was stored.", {
      state: `From ${equipmentStateLabels[from].toLowerCase()} it goes to: ${listed(transitions[from])}.`,
    });
  if (asksVerification(to) && !isVerified)
    return refuse("wrong-state", "It has not been verified. Nothing was stored.", {
      state:
        "Record a passed verification in its logbook first; after damage, repair or adjustment a new one.",
    });
  return ok(to);
};
