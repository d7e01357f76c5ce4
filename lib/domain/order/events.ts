import { z } from "zod";
import { defineEvent } from "../audit/define-event";

const number = z.string().min(1);
const plural = (count: number, one: string): string => `${count} ${one}${count === 1 ? "" : "s"}`;

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const orderEvents = {
  recorded: defineEvent({
    action: "order.recorded",
    entityKind: "order",
    payload: z.strictObject({
      number,
      customerId: z.uuid(),
      lines: z.int().positive(),
      quantity: z.int().positive(),
    }),
    sentence: (p) =>
      `recorded order ${p.number}: ${plural(p.lines, "line")}, ${plural(p.quantity, "sensor")}`,
  }),
  requested: defineEvent({
    action: "order.requested",
    entityKind: "order",
    payload: z.strictObject({
      number,
      customerId: z.uuid(),
      origin: z.enum(["portal", "interface"]),
      lines: z.int().positive(),
      quantity: z.int().positive(),
    }),
    sentence: (p) =>
      `requested work as order ${p.number}: ${plural(p.lines, "line")}, ${plural(p.quantity, "sensor")}`,
  }),
  amended: defineEvent({
    action: "order.amended",
    entityKind: "order",
    payload: z.strictObject({
      number,
      version: z.int().positive(),
      lines: z.int().positive(),
      quantity: z.int().positive(),
    }),
    sentence: (p) =>
      `amended order ${p.number} to version ${p.version}: ${plural(p.lines, "line")}, ${plural(p.quantity, "sensor")}`,
  }),
  accepted: defineEvent({
    action: "order.accepted",
    entityKind: "order",
    /** The contract review itself (ISO/IEC 17025:2017, 7.1.1 a–d, 7.1.3, 7.1.8): the four answers and what was told. */
    payload: z.strictObject({
      number,
      version: z.int().positive(),
      requirementsUnderstood: z.literal(true),
      capabilityAndResources: z.literal(true),
      externalProviders: z.enum(["none", "approved"]),
      methodSuitable: z.literal(true),
      decisionRule: z.enum(["none", "simple", "guarded", "guarded-binary", "target-risk"]),
      guardBandRatio: z.number().nullable(),
      /** With a target risk alone. */
      falseAcceptancePercent: z.number().optional(),
      toldCustomer: z.array(z.string()),
    }),
    sentence: (p) =>
      `accepted order ${p.number} after contract review${
        p.toldCustomer.length > 0
          ? `, having told the customer ${plural(p.toldCustomer.length, "thing")}`
          : ""
      }`,
  }),
  cancelled: defineEvent({
    action: "order.cancelled",
    entityKind: "order",
    payload: z.strictObject({ number, reason: z.string().min(1) }),
    sentence: (p) => `cancelled order ${p.number}: ${p.reason}`,
  }),
  completed: defineEvent({
    action: "order.completed",
    entityKind: "order",
    payload: z.strictObject({ number, sensors: z.int().positive() }),
    sentence: (p) => `completed order ${p.number}: ${plural(p.sensors, "sensor")} finished`,
  }),
} as const;
