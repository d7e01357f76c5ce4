import { ok, type Result, refuse } from "../refusal";
import type { Particulars } from "./particulars";
import type { EquipmentState } from "./types";

/** What a thing is never changes; a reference of another type is another reference. */
export const decideParticulars = (before: Particulars, after: Particulars): Result<Particulars> => {
  if (before.kind !== after.kind)
    return refuse("rule", "Equipment keeps its kind. Record the other thing with its own tag.");
  if (before.kind === "reference" && after.kind === "reference" && before.type !== after.type)
    return refuse("rule", "A reference keeps its type. Nothing was stored.", {
      "particulars.type": `It was recorded as type ${before.type}; record another reference with its own tag.`,
    });
  return ok(after);
};

export const decideState = (from: EquipmentState, to: EquipmentState): Result<EquipmentState> => {
  if (from === to)
    return refuse("wrong-state", "It is in that state already.", { state: "Choose another state." });
  if (from === "retired")
    return refuse("wrong-state", "Retired equipment does not come back. Record it anew with another tag.");
  return ok(to);
};
