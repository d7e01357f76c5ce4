import { placeHold } from "@/lib/data/hold/place-hold";
import { demandOrder } from "@/lib/data/order/demand-order";
import { askQuestion } from "@/lib/data/question/ask-question";
import type { AuditEvent } from "@/lib/domain/audit/define-event";
import { decidePlace } from "@/lib/domain/hold/decide-place";
import { PlaceHoldInput } from "@/lib/domain/hold/schema";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Work on a sensor, or a whole order, stands still; the customer may be asked how to go on. */
export const placeHoldOn = defineOperation({
  name: "hold/place",
  permission: "hold.place",
  input: PlaceHoldInput,
  perform: async ({ actor, now, tx }, { orderNumber, tag, kind, reason, question, publicUrl }) => {
    const order = await demandOrder(tx, orderNumber);
    const sensors = order.lines.flatMap((line) => line.sensors);
    const sensor = demand(decidePlace(order.state, sensors, { tag, kind, asks: question !== undefined }));
    const subject = { customerId: order.customerId, orderId: order.id, orderNumber: order.number, sensor };
    const person = personIdOf(actor);
    const hold = await placeHold(tx, { ...subject, kind, reason, placedById: person, placedAt: now });
    const events: [AuditEvent, ...AuditEvent[]] = [hold.event];
    const asked = question
      ? await askQuestion(
          tx,
          { ...subject, holdId: hold.id, ...question, askedById: person, askedAt: now },
          publicUrl,
        )
      : null;
    if (asked) events.push(asked.event);
    return {
      value: { holdId: hold.id, questionId: asked?.id ?? null, token: asked?.token ?? null },
      events,
    };
  },
});
