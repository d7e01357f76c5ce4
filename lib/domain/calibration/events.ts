import { z } from "zod";
import { defineEvent } from "../audit/define-event";

const named = { tag: z.string(), certificate: z.string(), performedOn: z.iso.date() };

/** Facts about calibrations of equipment that the audit log can hold; gathered in `domain/audit/events`. */
export const calibrationEvents = {
  accepted: defineEvent({
    action: "equipment.calibration-accepted",
    entityKind: "equipment",
    payload: z.strictObject({ ...named, reason: z.string() }),
    sentence: ({ tag, certificate, reason }) =>
      `accepted certificate ${certificate} for ${tag}${reason === "" ? "" : `, because: ${reason}`}`,
  }),
  rejected: defineEvent({
    action: "equipment.calibration-rejected",
    entityKind: "equipment",
    payload: z.strictObject({ ...named, reason: z.string() }),
    sentence: ({ tag, certificate, reason }) =>
      `rejected certificate ${certificate} for ${tag}, because: ${reason}`,
  }),
  digitalReceived: defineEvent({
    action: "equipment.digital-certificate-received",
    entityKind: "equipment",
    payload: z.strictObject({ tag: z.string(), certificate: z.string(), sha256: z.string() }),
    sentence: ({ tag, certificate }) => `read the digital certificate ${certificate} for ${tag}`,
  }),
  confirmed: defineEvent({
    action: "equipment.digital-certificate-confirmed",
    entityKind: "equipment",
    payload: z.strictObject({
      tag: z.string(),
      certificate: z.string(),
      sha256: z.string(),
      /** Names of fields whose confirmed value is not that of the file. */
      differing: z.array(z.string()),
    }),
    sentence: ({ tag, certificate, differing }) =>
      `confirmed the digital certificate ${certificate} for ${tag}${differing.length === 0 ? "" : `, differing in ${differing.join(", ")}`}`,
  }),
  adopted: defineEvent({
    action: "equipment.own-certificate-adopted",
    entityKind: "equipment",
    payload: z.strictObject({ ...named, dueOn: z.iso.date() }),
    sentence: ({ tag, certificate, dueOn }) =>
      `took our own certificate ${certificate} for ${tag}, due again on ${dueOn}`,
  }),
} as const;
