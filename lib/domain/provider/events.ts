import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { equipmentKindLabels } from "../equipment/labels";
import { equipmentKinds } from "../equipment/types";
import { providerRouteLabels } from "./labels";
import { providerRoutes } from "./types";

const report = { sensor: z.string(), provider: z.string(), certificate: z.string() };

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
  reportRecorded: defineEvent({
    action: "provider.report-recorded",
    entityKind: "sensor",
    payload: z.strictObject({
      ...report,
      issuedOn: z.iso.date(),
      correction: z.string(),
      sha256: z.string().optional(),
    }),
    sentence: (p) =>
      `recorded certificate ${p.certificate} of ${p.issuedOn} by ${p.provider} for sensor ${p.sensor}${p.correction === "" ? "" : `, as a correction: ${p.correction}`}`,
  }),
  reportAccepted: defineEvent({
    action: "provider.report-accepted",
    entityKind: "sensor",
    payload: z.strictObject({ ...report, orderNumber: z.string(), correction: z.string() }),
    sentence: (p) =>
      `held the record of sensor ${p.sensor} against certificate ${p.certificate} by ${p.provider} and accepted it${p.correction === "" ? "" : " as a correction"}`,
  }),
  reportRejected: defineEvent({
    action: "provider.report-rejected",
    entityKind: "sensor",
    payload: z.strictObject({ ...report, reason: z.string() }),
    sentence: (p) =>
      `rejected the record of sensor ${p.sensor} from certificate ${p.certificate} by ${p.provider}, because: ${p.reason}`,
  }),
} as const;
