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
  repeated: defineEvent({
    action: "order.repeated",
    entityKind: "order",
    payload: z.strictObject({
      number,
      /** The order it repeats. */
      repeats: number,
      /** What is not as it was then: procedure, scope, prices. */
      changes: z.array(z.string()),
    }),
    sentence: (p) =>
      `made order ${p.number} as ${p.repeats} was${p.changes.length > 0 ? `; changed since: ${p.changes.join("; ")}` : ""}`,
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
      /** Number of the review kept with the order. */
      review: z.int().positive().optional(),
      /** Points at which no result could pass, and points outside the scope, as they stood at acceptance. */
      undecidable: z.array(z.string()).optional(),
      outsideScope: z.array(z.string()).optional(),
    }),
    sentence: (p) =>
      `accepted order ${p.number} after contract review${
        p.toldCustomer.length > 0
          ? `, having told the customer ${plural(p.toldCustomer.length, "thing")}`
          : ""
      }`,
  }),
  takenOver: defineEvent({
    action: "order.taken-over",
    entityKind: "order",
    payload: z.strictObject({ number, version: z.int().positive(), lines: z.int().positive() }),
    sentence: (p) => `took the requested order ${p.number} over: ${plural(p.lines, "line")}`,
  }),
  noted: defineEvent({
    action: "order.noted",
    entityKind: "order",
    payload: z.strictObject({
      number,
      kind: z.enum(["note", "told-customer", "from-customer"]),
      isForCustomer: z.boolean(),
    }),
    sentence: (p) => `wrote a note to order ${p.number}${p.isForCustomer ? ", which the customer sees" : ""}`,
  }),
  differenceRaised: defineEvent({
    action: "order.difference-raised",
    entityKind: "order",
    payload: z.strictObject({ number, difference: z.uuid() }),
    sentence: (p) => `raised a difference to be settled with the customer of order ${p.number}`,
  }),
  differenceSettled: defineEvent({
    action: "order.difference-settled",
    entityKind: "order",
    payload: z.strictObject({ number, difference: z.uuid() }),
    sentence: (p) => `settled a difference of order ${p.number} with the customer`,
  }),
  rollAgreed: defineEvent({
    action: "order.roll-agreed",
    entityKind: "order",
    payload: z.strictObject({ number, roll: z.string().min(1) }),
    sentence: (p) => `recorded that the customer of order ${p.number} agrees to one end of ${p.roll}`,
  }),
  /** ISO/IEC 17025:2017, 7.1.6: reviewed again; what changed stands in the change itself. */
  changed: defineEvent({
    action: "order.changed",
    entityKind: "order",
    payload: z.strictObject({
      number,
      version: z.int().positive(),
      change: z.int().positive(),
      review: z.int().positive(),
      differences: z.int().positive(),
      pausedRuns: z.array(z.string()),
      undecidable: z.array(z.string()),
    }),
    sentence: (p) =>
      `changed the accepted order ${p.number} in ${plural(p.differences, "place")}, after review${
        p.pausedRuns.length > 0
          ? `; ${p.pausedRuns.join(", ")} ${p.pausedRuns.length === 1 ? "stands" : "stand"} still until it is acknowledged`
          : ""
      }`,
  }),
  changeAcknowledged: defineEvent({
    action: "order.change-acknowledged",
    entityKind: "order",
    payload: z.strictObject({ number, change: z.int().positive(), run: z.string().min(1) }),
    sentence: (p) => `acknowledged change ${p.change} of order ${p.number} for run ${p.run}`,
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
