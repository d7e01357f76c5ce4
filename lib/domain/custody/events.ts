import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { custodyKinds, custodyLabels } from "./labels";

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const custodyEvents = {
  moved: defineEvent({
    action: "custody.moved",
    entityKind: "storage-place",
    payload: z.strictObject({
      tags: z.array(z.string()).min(1),
      kind: z.enum(custodyKinds),
      /** The code of the storage place; empty where it went elsewhere. */
      place: z.string(),
      note: z.string(),
    }),
    sentence: (p) =>
      `recorded ${custodyLabels[p.kind].toLowerCase()}${p.place === "" ? "" : ` in ${p.place}`}: ${p.tags.join(", ")}${
        p.note === "" ? "" : ` (${p.note})`
      }`,
  }),
  disposed: defineEvent({
    action: "custody.disposed",
    entityKind: "sensor",
    payload: z.strictObject({ tag: z.string(), orderNumber: z.string(), instruction: z.string().min(1) }),
    sentence: (p) => `disposed of sensor ${p.tag} of order ${p.orderNumber}: ${p.instruction}`,
  }),
  placeRecorded: defineEvent({
    action: "custody.place-recorded",
    entityKind: "storage-place",
    payload: z.strictObject({ code: z.string(), name: z.string(), conditions: z.string() }),
    sentence: (p) => `recorded storage place ${p.code}, ${p.name}${p.conditions ? ` (${p.conditions})` : ""}`,
  }),
  placeChanged: defineEvent({
    action: "custody.place-changed",
    entityKind: "storage-place",
    payload: z.strictObject({
      code: z.string(),
      name: z.string(),
      conditions: z.string(),
      active: z.boolean(),
    }),
    sentence: (p) =>
      `changed storage place ${p.code}, ${p.name}${p.conditions ? ` (${p.conditions})` : ""}${
        p.active ? "" : ", no longer used"
      }`,
  }),
  retentionSet: defineEvent({
    action: "custody.retention-set",
    entityKind: "laboratory",
    payload: z.strictObject({ days: z.int() }),
    sentence: (p) => `set how long a sensor is kept after its certificate to ${p.days} days`,
  }),
} as const;
