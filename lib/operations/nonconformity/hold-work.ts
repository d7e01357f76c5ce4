import { placeHold } from "@/lib/data/hold/place-hold";
import { enter } from "@/lib/data/nonconformity/enter";
import { demandStory } from "@/lib/data/nonconformity/load-story";
import { loadWorkToHold } from "@/lib/data/nonconformity/work-to-hold";
import type { AuditEvent } from "@/lib/domain/audit/define-event";
import { HoldInput } from "@/lib/domain/nonconformity/schema";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Stops what stands on it and has no certificate yet, ISO/IEC 17025 7.10.1 b. What stands still already stays so. */
export const holdWork = defineOperation({
  name: "nonconformity/hold-work",
  permission: "hold.place",
  input: HoldInput,
  perform: async ({ actor, now, tx }, { number, version, text }) => {
    const loaded = await demandStory(tx, number, version);
    const { row, subjectKind, openHolds } = loaded;
    const found = await loadWorkToHold(tx, { kind: subjectKind, id: row.subjectId });
    const sensors = found.filter(({ id }) => !openHolds.some(({ sensorId }) => sensorId === id));
    if (sensors.length === 0)
      throw new Refused({
        code: "rule",
        message: "Nothing stands on it that has no certificate and goes on. Nothing was stored.",
      });
    const by = { placedById: personIdOf(actor), placedAt: now };
    const events: AuditEvent[] = [];
    for (const { id, tag, customerId, line } of sensors) {
      const whose = { customerId, orderId: line.orderId, orderNumber: line.order.number };
      const hold = { kind: "nonconforming-work" as const, reason: `${number}: ${row.title}` };
      const placed = await placeHold(tx, {
        ...whose,
        sensor: { id, tag },
        ...hold,
        nonconformityId: row.id,
        ...by,
      });
      events.push(placed.event);
    }
    const figures = { sensors: sensors.map(({ tag }) => tag) };
    const said = { saidById: by.placedById, saidAt: now };
    const event = await enter(tx, loaded, { kind: "hold", text, figures, ...said });
    return { value: { number, held: sensors.length }, events: [event, ...events] };
  },
});
