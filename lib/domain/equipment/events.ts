import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { entryKindLabels, equipmentKindLabels, equipmentStateLabels } from "./labels";
import { entryKinds } from "./logbook";
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
      /** Intervals and requirement before and after, where they changed: the calibration programme, 6.4.7. */
      programmeBefore: z.string().optional(),
      programmeAfter: z.string().optional(),
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
  entryRecorded: defineEvent({
    action: "equipment.entry-recorded",
    entityKind: "equipment",
    payload: z.strictObject({
      tag: z.string(),
      entry: z.enum(entryKinds),
      happenedOn: z.iso.date(),
      outcome: z.enum(["passed", "failed", "none"]),
    }),
    sentence: ({ tag, entry, happenedOn, outcome }) =>
      `wrote into the logbook of ${tag}: ${entryKindLabels[entry].toLowerCase()} of ${happenedOn}${outcome === "none" ? "" : `, ${outcome}`}`,
  }),
  labelPrinted: defineEvent({
    action: "equipment.label-printed",
    entityKind: "equipment",
    payload: z.strictObject({ tag: z.string(), dueOn: z.iso.date().nullable() }),
    sentence: ({ tag, dueOn }) => `printed the label of ${tag}${dueOn ? `, due ${dueOn}` : ""}`,
  }),
  usesCounted: defineEvent({
    action: "equipment.uses-counted",
    entityKind: "run",
    payload: z.strictObject({
      run: z.string(),
      uses: z.array(
        z.strictObject({ tag: z.string(), hoursInFurnace: z.number(), hoursAbove1000: z.number() }),
      ),
    }),
    sentence: ({ run, uses }) => `counted what run ${run} cost ${uses.map(({ tag }) => tag).join(", ")}`,
  }),
  servicePolicyChanged: defineEvent({
    action: "equipment.service-policy-changed",
    entityKind: "laboratory",
    payload: z.strictObject({ before: z.string(), after: z.string(), reason: z.string() }),
    sentence: ({ reason }) =>
      `changed what follows where equipment is overdue or in doubt, because: ${reason}`,
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
