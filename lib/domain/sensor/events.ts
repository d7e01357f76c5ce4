import { z } from "zod";
import { defineEvent } from "../audit/define-event";

const tag = z.string().min(1);
const orderNumber = z.string().min(1);

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const sensorEvents = {
  received: defineEvent({
    action: "sensor.received",
    entityKind: "sensor",
    payload: z.strictObject({
      tag,
      orderNumber,
      serial: z.string().min(1),
      condition: z.enum(["as-described", "deviates"]),
      /** What the checks found that the customer should hear of before loading. */
      findings: z.array(z.string()),
    }),
    sentence: (p) =>
      `received sensor ${p.tag} (serial ${p.serial}) for order ${p.orderNumber}${
        p.findings.length > 0 ? `, with findings: ${p.findings.join("; ")}` : ""
      }`,
  }),
  buildStated: defineEvent({
    action: "sensor.build-stated",
    entityKind: "sensor",
    payload: z.strictObject({ tag, changed: z.array(z.string()).min(1), reason: z.string() }),
    sentence: (p) => `stated how sensor ${p.tag} is made (${p.changed.join("; ")}): ${p.reason}`,
  }),
  collected: defineEvent({
    action: "sensor.collected",
    entityKind: "sensor",
    payload: z.strictObject({
      tag,
      orderNumber,
      handedOver: z.enum(["in-person", "carrier"]),
      withoutCertificate: z.boolean(),
      reason: z.string(),
    }),
    sentence: (p) =>
      `handed back sensor ${p.tag} of order ${p.orderNumber} ${p.handedOver === "carrier" ? "by carrier" : "in person"}${
        p.withoutCertificate ? ` without a certificate: ${p.reason}` : ""
      }`,
  }),
  labelPrinted: defineEvent({
    action: "sensor.label-printed",
    entityKind: "sensor",
    payload: z.strictObject({ tag, orderNumber }),
    sentence: (p) => `printed the label of sensor ${p.tag}`,
  }),
} as const;
