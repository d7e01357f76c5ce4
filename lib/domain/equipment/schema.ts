import { z } from "zod";
import { day, optionalLine, requiredLine, requiredLines, rowVersion } from "../typed-text";
import { EntryFigures } from "./logbook";
import { Particulars } from "./particulars";
import { Requirement } from "./requirement";
import { ServicePolicy } from "./service-policy";
import { equipmentStates } from "./types";

const interval = (most: number) =>
  z.int("Write a whole number.").min(1, "At least 1.").max(most, `At most ${most}.`).nullable().default(null);

export const EquipmentInput = z.strictObject({
  tag: requiredLine("Write the tag that stands on it, such as REF-01.", 40),
  maker: requiredLine("Write who made it.", 120),
  model: optionalLine(120),
  serial: requiredLine("Write its serial number.", 120),
  firmware: optionalLine(120),
  location: optionalLine(200),
  receivedOn: day.nullable().default(null),
  calibrationIntervalMonths: interval(120),
  checkIntervalDays: interval(3650),
  maintenanceIntervalDays: interval(3650),
  requirement: Requirement.default({}),
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

/** One entry of the logbook; what it may judge and the figures of its kind stand together. */
export const EntryInput = z.strictObject({
  id: z.uuid(),
  happenedOn: day,
  /** Asked for where nobody but a person can judge; a check is judged by its own figures. */
  outcome: z.enum(["passed", "failed"], "Say whether it passed.").optional(),
  summary: requiredLines("Say in a line or two what was done and found.", 600),
  figures: EntryFigures,
  document: z
    .strictObject({
      fileName: z.string().max(200),
      bytes: z.custom<Uint8Array>((value) => value instanceof Uint8Array, "The file did not arrive."),
    })
    .optional(),
});

export const ServicePolicyInput = z.strictObject({
  version: rowVersion,
  policy: ServicePolicy,
  reason: requiredLine("Say why: whoever reads this later was not there.", 400),
});

export const EquipmentLabelsInput = z.strictObject({
  ids: z.array(z.uuid()).min(1, "Choose at least one.").max(200, "At most 200 at a time."),
  publicOrigin: z.url(),
});
