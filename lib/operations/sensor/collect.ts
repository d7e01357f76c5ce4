import { awayOf } from "@/lib/data/custody/away-of";
import { insertCustodyEvent } from "@/lib/data/custody/insert-custody-event";
import { completeFinishedOrder } from "@/lib/data/order/complete-finished-order";
import { findSensor } from "@/lib/data/sensor/load-sensor";
import { setSensorState } from "@/lib/data/sensor/set-state";
import { eventOf } from "@/lib/domain/audit/define-event";
import { decideInHouse } from "@/lib/domain/custody/decide-in-house";
import { demand, Refused } from "@/lib/domain/refusal";
import { sensorEvents } from "@/lib/domain/sensor/events";
import { decideCollection } from "@/lib/domain/sensor/rules";
import { CollectSensorInput } from "@/lib/domain/sensor/schema";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Hands a sensor back: with its certificate, or without one and with a reason. */
export const collectSensor = defineOperation({
  name: "sensor.collect",
  permission: "sensor.release",
  input: CollectSensorInput,
  perform: async ({ actor, now, tx }, input) => {
    const sensor = await findSensor(tx, input.tag);
    if (!sensor)
      throw new Refused({ code: "not-found", message: "This sensor is not here. Nothing was changed." });
    const { from, withoutCertificate } = demand(decideCollection(sensor.state, input.reason));
    const away = [...(await awayOf(tx, [sensor.id])).values()];
    demand(decideInHouse(away.map((withWhom) => ({ tag: sensor.tag, withWhom }))));
    await setSensorState(tx, [sensor.id], [from], "collected");
    const { tag, orderNumber } = sensor;
    await insertCustodyEvent(tx, {
      sensorIds: [sensor.id],
      kind: "handed-over",
      toWhom: input.handedOver === "carrier" ? "the carrier" : "the customer",
      condition: input.reason,
      recordedById: personIdOf(actor),
      happenedAt: now,
    });
    const event = eventOf(sensorEvents.collected, sensor.id, {
      tag,
      orderNumber,
      handedOver: input.handedOver,
      withoutCertificate,
      reason: input.reason,
    });
    return {
      value: { tag, orderNumber },
      events: [event, ...(await completeFinishedOrder(tx, orderNumber))],
    };
  },
});
