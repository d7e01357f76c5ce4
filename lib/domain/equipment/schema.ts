import { z } from "zod";
import { optionalLine, requiredLine, rowVersion } from "../typed-text";
import { Particulars } from "./particulars";
import { equipmentStates } from "./types";

export const EquipmentInput = z.strictObject({
  tag: requiredLine("Write the tag that stands on it, such as REF-01.", 40),
  maker: requiredLine("Write who made it.", 120),
  model: optionalLine(120),
  serial: requiredLine("Write its serial number.", 120),
  particulars: Particulars,
});

export const EquipmentChange = EquipmentInput.omit({ tag: true }).extend({
  id: z.uuid(),
  version: rowVersion,
});

export const EquipmentStateChange = z.strictObject({
  id: z.uuid(),
  version: rowVersion,
  state: z.enum(equipmentStates, "Choose a state."),
  reason: requiredLine("Say why: whoever reads this later was not there.", 400),
});
