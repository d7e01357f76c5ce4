import { demandOrder } from "@/lib/data/order/demand-order";
import { insertSensors } from "@/lib/data/sensor/insert-sensors";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { decidePastDay } from "@/lib/domain/order/past-day";
import { demand, Refused } from "@/lib/domain/refusal";
import { sensorEvents } from "@/lib/domain/sensor/events";
import { intakeFindings } from "@/lib/domain/sensor/intake-findings";
import { decideReceipt } from "@/lib/domain/sensor/rules";
import { ReceiveSensorsInput } from "@/lib/domain/sensor/schema";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Takes sensors in for one order line: identity, condition, electrical checks. All of the paste, or none. */
export const receiveSensors = defineOperation({
  name: "sensor.receive",
  permission: "sensor.receive",
  input: ReceiveSensorsInput,
  perform: async ({ actor, now, tx }, input) => {
    const order = await demandOrder(tx, input.orderNumber);
    const line = order.lines.find(({ position }) => position === input.position);
    if (!line)
      throw new Refused({
        code: "invalid",
        message: "This order has no such line. Nothing was stored.",
        fields: { position: "Choose a line of this order." },
      });
    const received = order.lines.flatMap(({ position, sensors }) =>
      sensors.map(({ serial, tag }) => ({ serial, tag, position })),
    );
    const { position, quantity } = line;
    demand(decideReceipt(order.state, { position, quantity, received }, input.sensors));
    const { receivedOn } = input;
    demand(decidePastDay("receivedOn", receivedOn, now, "the sensors came"));
    const stored = await insertSensors(
      tx,
      {
        customerId: order.customerId,
        line,
        receivedOn,
        build: input.build,
        takenInById: personIdOf(actor),
        takenInAt: now,
      },
      input.sensors,
    );
    const events = stored.map(({ id, tag }, index) => {
      const sensor = input.sensors[index]!;
      return eventOf(sensorEvents.received, id, {
        tag,
        orderNumber: order.number,
        serial: sensor.serial,
        condition: sensor.condition,
        findings: [...intakeFindings(sensor)],
      });
    });
    return {
      value: { orderNumber: order.number, tags: stored.map(({ tag }) => tag) },
      events: events as [AuditEvent, ...AuditEvent[]],
    };
  },
});
