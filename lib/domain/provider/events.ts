import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { equipmentKindLabels } from "../equipment/labels";
import { equipmentKinds } from "../equipment/types";
import { providerRouteLabels } from "./labels";
import { providerRoutes } from "./types";

/** Facts about who calibrates for the laboratory; gathered in `domain/audit/events`. */
export const providerEvents = {
  recorded: defineEvent({
    action: "provider.recorded",
    entityKind: "provider",
    payload: z.strictObject({ name: z.string(), route: z.enum(providerRoutes) }),
    sentence: ({ name, route }) => `recorded ${name} (${providerRouteLabels[route].toLowerCase()})`,
  }),
  approved: defineEvent({
    action: "provider.approved",
    entityKind: "provider",
    payload: z.strictObject({
      name: z.string(),
      from: z.iso.date(),
      until: z.iso.date(),
      kinds: z.array(z.enum(equipmentKinds)).min(1),
      note: z.string(),
    }),
    sentence: ({ name, from, until, kinds, note }) =>
      `approved ${name} from ${from} to ${until} for ${kinds.map((kind) => equipmentKindLabels[kind].toLowerCase()).join(", ")}, because: ${note}`,
  }),
  suspended: defineEvent({
    action: "provider.suspended",
    entityKind: "provider",
    payload: z.strictObject({ name: z.string(), reason: z.string() }),
    sentence: ({ name, reason }) => `suspended ${name}, because: ${reason}`,
  }),
} as const;
