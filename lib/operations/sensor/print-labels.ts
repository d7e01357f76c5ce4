import { loadOrder } from "@/lib/data/order/load-order";
import { printedBefore } from "@/lib/data/sensor/printed-before";
import { sensorLabels } from "@/lib/documents/label/sensor-labels";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { sensorEvents } from "@/lib/domain/sensor/events";
import { labelLayouts, startProblem } from "@/lib/domain/sensor/label-layouts";
import { PrintLabelsInput } from "@/lib/domain/sensor/schema";
import { defineOperation } from "../operation";

/** Labels of an order's sensors, or of one of them, as a PDF. Printing again is an event of its own. */
export const printLabels = defineOperation({
  name: "sensor.print-labels",
  permission: "sensor.receive",
  input: PrintLabelsInput,
  perform: async ({ now, tx }, input) => {
    const order = await loadOrder(tx, input.orderNumber);
    const sensors = (order?.lines ?? [])
      .flatMap((line) => line.sensors.map((sensor) => ({ ...sensor, typeLetter: line.typeLetter })))
      .filter(({ tag }) => input.tag === "" || tag === input.tag);
    if (!order || sensors.length === 0)
      throw new Refused({
        code: "not-found",
        message: "There is no sensor to label here yet. Take the sensors in first.",
      });
    const layout = labelLayouts[input.layout];
    const problem = startProblem(layout, input.startAt);
    if (problem !== null)
      throw new Refused({ code: "invalid", message: "Nothing was printed.", fields: { startAt: problem } });
    const printed = await printedBefore(
      tx,
      sensors.map(({ id }) => id),
    );
    const bytes = await sensorLabels(
      sensors.map(({ tag, serial, typeLetter }) => ({
        tag,
        serial,
        typeLetter,
        address: `${input.publicOrigin}/sensors/${tag}`,
      })),
      now,
      layout,
      input.startAt,
    );
    const events = sensors.map(({ id, tag }) =>
      eventOf(sensorEvents.labelPrinted, id, {
        tag,
        orderNumber: order.number,
        layout: input.layout,
        again: printed.has(id),
      }),
    );
    return { value: { bytes }, events: events as [AuditEvent, ...AuditEvent[]] };
  },
});
