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
  listTakenIn: defineEvent({
    action: "sensor.list-taken-in",
    entityKind: "order",
    payload: z.strictObject({
      orderNumber,
      /** Of the list as it came, which is kept. */
      sha256: z.string().length(64),
      format: z.enum(["CSV", "XLSX"]),
      sensors: z.int().min(1),
    }),
    sentence: (p) =>
      `took in ${p.sensors} sensors of order ${p.orderNumber} from a list (${p.format}, SHA-256 ${p.sha256.slice(0, 12)}…)`,
  }),
  photoAdded: defineEvent({
    action: "sensor.photo-added",
    entityKind: "sensor",
    payload: z.strictObject({ tag, sha256: z.string().length(64), width: z.int(), height: z.int() }),
    sentence: (p) =>
      `added a photo of sensor ${p.tag} (${p.width} × ${p.height}, SHA-256 ${p.sha256.slice(0, 12)}…)`,
  }),
  intakePolicyChanged: defineEvent({
    action: "sensor.intake-policy-changed",
    entityKind: "laboratory",
    payload: z.strictObject({ before: z.string(), after: z.string(), reason: z.string() }),
    sentence: (p) => `changed the limits sensors are held against at intake: ${p.reason}`,
  }),
  labelPrinted: defineEvent({
    action: "sensor.label-printed",
    entityKind: "sensor",
    payload: z.strictObject({
      tag,
      orderNumber,
      /** Which sheet or roll; those printed before there was a choice were on the roll. */
      layout: z.string().optional(),
      again: z.boolean().optional(),
    }),
    sentence: (p) => `printed the label of sensor ${p.tag}${p.again ? " again" : ""}`,
  }),
} as const;
