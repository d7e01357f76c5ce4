import { insertCustodyEvent } from "@/lib/data/custody/insert-custody-event";
import { completeFinishedOrder } from "@/lib/data/order/complete-finished-order";
import { findSensor } from "@/lib/data/sensor/load-sensor";
import { setSensorState } from "@/lib/data/sensor/set-state";
import { eventOf } from "@/lib/domain/audit/define-event";
import { custodyEvents } from "@/lib/domain/custody/events";
import { DisposeInput } from "@/lib/domain/custody/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideCollection } from "@/lib/domain/sensor/rules";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Disposes of a sensor on the customer's instruction, which is kept: it does not come back. */
export const disposeSensor = defineOperation({
  name: "custody/dispose",
  permission: "sensor.release",
  input: DisposeInput,
  perform: async ({ actor, now, tx }, { tag, instruction }) => {
    const sensor = await findSensor(tx, tag);
    if (!sensor)
      throw new Refused({ code: "not-found", message: "This sensor is not here. Nothing was changed." });
    const { from } = demand(decideCollection(sensor.state, sensor.state === "issued" ? "" : instruction));
    await setSensorState(tx, [sensor.id], [from], "collected");
    await insertCustodyEvent(tx, {
      sensorIds: [sensor.id],
      kind: "disposed",
      condition: instruction,
      recordedById: personIdOf(actor),
      happenedAt: now,
    });
    const { orderNumber } = sensor;
    const event = eventOf(custodyEvents.disposed, sensor.id, { tag, orderNumber, instruction });
    return { value: { tag }, events: [event, ...(await completeFinishedOrder(tx, orderNumber))] };
  },
});
