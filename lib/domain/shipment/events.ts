import { z } from "zod";
import { defineEvent } from "../audit/define-event";

/** Facts about return shipments that the audit log can hold; gathered in `domain/audit/events`. */
export const shipmentEvents = {
  sent: defineEvent({
    action: "shipment.sent",
    entityKind: "order",
    payload: z.strictObject({
      number: z.string(),
      orderNumber: z.string(),
      sensors: z.int().positive(),
      handedOver: z.enum(["carrier", "in-person"]),
      isLast: z.boolean(),
    }),
    sentence: (p) =>
      `sent ${p.sensors} ${p.sensors === 1 ? "sensor" : "sensors"} of order ${p.orderNumber} back with ${p.number}, ${p.handedOver === "carrier" ? "by carrier" : "in person"}${p.isLast ? "; nothing of it is left here" : ""}`,
  }),
} as const;
