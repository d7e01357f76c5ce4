import { demandOrder } from "@/lib/data/order/demand-order";
import type { AuditEvent } from "@/lib/domain/audit/define-event";
import { countedSensors } from "@/lib/domain/order/counted-sensors";
import { ReceiveSensorsInput } from "@/lib/domain/sensor/schema";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";
import { takeIn } from "./take-in";

/** Takes sensors in for one order line: identity, condition, electrical checks. All of the paste, or none. */
export const receiveSensors = defineOperation({
  name: "sensor.receive",
  permission: "sensor.receive",
  input: ReceiveSensorsInput,
  perform: async ({ actor, now, tx }, input) => {
    const order = await demandOrder(tx, input.orderNumber);
    const { tags, deviating, twice, events } = await takeIn(tx, {
      order,
      position: input.position,
      receivedOn: input.receivedOn,
      sensors: input.sensors,
      takenInById: personIdOf(actor),
      now,
    });
    const before = order.lines.reduce(
      (sum, { quantity, sensors }) => sum + quantity - countedSensors(sensors).length,
      0,
    );
    return {
      value: { orderNumber: order.number, tags, deviating, twice, toCome: before - tags.length },
      events: events as [AuditEvent, ...AuditEvent[]],
    };
  },
});
