import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { equipmentKindLabels, equipmentStateLabels } from "./labels";
import { equipmentKinds, equipmentStates } from "./types";

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const equipmentEvents = {
  recorded: defineEvent({
    action: "equipment.recorded",
    entityKind: "equipment",
    payload: z.strictObject({ tag: z.string(), kind: z.enum(equipmentKinds) }),
    sentence: ({ tag, kind }) => `recorded the ${equipmentKindLabels[kind].toLowerCase()} ${tag}`,
  }),
  changed: defineEvent({
    action: "equipment.changed",
    entityKind: "equipment",
    payload: z.strictObject({
      tag: z.string(),
      changed: z.array(z.string()).min(1),
      /** Figures later evidence will rest on: the old ones stay readable here. */
      particularsBefore: z.string(),
      particularsAfter: z.string(),
    }),
    sentence: ({ tag, changed }) =>
      changed.includes("particulars") ? `changed the figures of ${tag}` : `changed the record of ${tag}`,
  }),
  stateSet: defineEvent({
    action: "equipment.state-set",
    entityKind: "equipment",
    payload: z.strictObject({
      tag: z.string(),
      from: z.enum(equipmentStates),
      to: z.enum(equipmentStates),
      reason: z.string(),
    }),
    sentence: ({ tag, to, reason }) =>
      `set ${tag} to ${equipmentStateLabels[to].toLowerCase()}, because: ${reason}`,
  }),
  calibrationRecorded: defineEvent({
    action: "equipment.calibration-recorded",
    entityKind: "equipment",
    payload: z.strictObject({
      tag: z.string(),
      certificate: z.string(),
      performedOn: z.iso.date(),
      dueOn: z.iso.date(),
    }),
    sentence: ({ tag, certificate, dueOn }) =>
      `recorded certificate ${certificate} for ${tag}, due again on ${dueOn}`,
  }),
} as const;
