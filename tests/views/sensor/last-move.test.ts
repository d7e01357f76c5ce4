import { afterAll, beforeAll, expect, it } from "vitest";
import { execute } from "@/lib/operations/execute";
import { printLabels } from "@/lib/operations/sensor/print-labels";
import { orderView } from "@/lib/views/order/order";
import { sensorView } from "@/lib/views/sensor/sensor";
import { clock, type FrontDesk, openFrontDesk } from "../../support/front-desk";
import { accepted, orderInput, received } from "../../support/orders";

let desk: FrontDesk;
beforeAll(async () => {
  desk = await openFrontDesk();
});
afterAll(() => desk.close());

it("tells who moved a sensor last, not who printed its label since", async () => {
  const orderNumber = await accepted(desk, orderInput(desk.northern.customerId));
  const [tag = ""] = await received(desk, orderNumber, "A1");
  const input = { orderNumber, publicOrigin: "https://calibration.example" };
  await execute(printLabels, desk.technician, input, clock);
  const sensor = await sensorView(desk.technician, tag);
  expect(sensor.history[0]).toMatchObject({ who: "Tom Bench", action: "sensor.label-printed" });
  expect(sensor.last).toMatchObject({ who: "Ada Desk", action: "sensor.received" });
  expect((await orderView(desk.technician, orderNumber, clock())).last).toMatchObject({
    action: "sensor.received",
  });
});
