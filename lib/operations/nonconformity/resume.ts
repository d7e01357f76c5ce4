import { enter } from "@/lib/data/nonconformity/enter";
import { demandStory } from "@/lib/data/nonconformity/load-story";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { holdEvents } from "@/lib/domain/hold/events";
import { StepInput } from "@/lib/domain/nonconformity/schema";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Authorises that the work goes on (7.10.1 f): every hold of it ends, and the log names the authority. */
export const resumeWork = defineOperation({
  name: "nonconformity/resume",
  permission: "nonconformity.decide",
  input: StepInput,
  perform: async ({ actor, now, tx }, { number, version, text }) => {
    const loaded = await demandStory(tx, number, version);
    if (loaded.openHolds.length === 0)
      throw new Refused({ code: "wrong-state", message: "Nothing is on hold for it. Nothing was stored." });
    const by = personIdOf(actor);
    const event = await enter(tx, loaded, { kind: "resumed", text, saidById: by, saidAt: now });
    const events: AuditEvent[] = [];
    for (const { id, customerId, orderId, sensorId } of loaded.openHolds) {
      const order = await tx.order.findUniqueOrThrow({ where: { id: orderId }, select: { number: true } });
      const sensor = sensorId ? await tx.sensor.findUniqueOrThrow({ where: { id: sensorId } }) : null;
      const release = { outcome: "go-on" as const, reason: text, disclaimer: "" };
      await tx.holdRelease.create({
        data: { holdId: id, customerId, ...release, releasedById: by, releasedAt: now },
      });
      const payload = { orderNumber: order.number, tag: sensor?.tag ?? "", ...release };
      events.push(eventOf(holdEvents.released, id, payload));
    }
    return { value: { number }, events: [event, ...events] };
  },
});
