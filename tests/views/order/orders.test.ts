import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { execute } from "@/lib/operations/execute";
import { collectSensor } from "@/lib/operations/sensor/collect";
import { orderView } from "@/lib/views/order/order";
import { orderFormView } from "@/lib/views/order/order-form";
import { ordersView } from "@/lib/views/order/orders";
import { receivableView } from "@/lib/views/order/receivable";
import { portalOrdersView, portalOrderView } from "@/lib/views/portal-orders";
import { sensorView } from "@/lib/views/sensor/sensor";
import { sensorsView } from "@/lib/views/sensor/sensors";
import { clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { accepted, lineInput, orderInput, received, recorded } from "../../support/orders";

const today = "2026-03-04";

let desk: FrontDesk;
let north: string;
let south: string;
let tags: readonly string[];

beforeAll(async () => {
  desk = await openFrontDesk();
  const lines = [
    { ...lineInput, setpoints: "300 1000 1100" },
    { ...lineInput, quantity: 1 },
  ];
  north = await accepted(desk, orderInput(desk.northern.customerId, { lines }));
  tags = await received(desk, north, "A1\nB2");
  south = await recorded(desk, orderInput(desk.southern.customerId, { purchaseOrder: "" }));
});
afterAll(() => desk.close());

describe("the laboratory's orders", () => {
  it("are listed by state, with counts", async () => {
    const open = await ordersView(desk.technician, {}, clock());
    expect(open.orders.map(({ number }) => number)).toEqual([south, north]);
    expect(open.orders[1]).toMatchObject({ quantity: 4, received: 2, issued: 0, types: ["K"] });
    expect(open.mayRecord).toBe(false);
    expect(
      (await ordersView(desk.frontDesk, { show: "accepted" }, clock())).orders.map(({ number }) => number),
    ).toEqual([north]);
    expect(Object.fromEntries(open.filters.map(({ name, count }) => [name, count]))).toMatchObject({
      open: 2,
      recorded: 1,
      accepted: 1,
      completed: 0,
      all: 2,
    });
  });

  it("each show their lines, what a class says at each setpoint, their sensors and their thread", async () => {
    const order = await orderView(desk.frontDesk, north, clock());
    expect(order.customer.name).toBe("Northern Heat Treatment");
    expect(order.lines[0]?.setpoints.map(({ tolerance }) => tolerance)).toEqual([
      "± 1.50 °C",
      "± 4.00 °C",
      "no tolerance defined",
    ]);
    expect(order.lines[0]?.sensors.map(({ tag, serial }) => [tag, serial])).toEqual([
      [tags[0], "A1"],
      [tags[1], "B2"],
    ]);
    expect(order.thread.find(({ state }) => state === "now")?.label).toBe("Received 2 of 4");
    expect(order.next).toBe("The front desk takes 2 sensors in.");
    expect(order.last).toMatchObject({ who: "Ada Desk", action: "sensor.received" });
    expect(order.history.map(({ action }) => action)).toEqual(["order.accepted", "order.recorded"]);
    expect(order).toMatchObject({ mayAmend: false, mayAccept: false, mayReceive: true, mayCancel: true });
    expect(await orderView(desk.technician, north, clock())).toMatchObject({
      mayReceive: true,
      mayCancel: false,
    });
  });

  it("say what their review must settle while they are only recorded", async () => {
    const order = await orderView(desk.frontDesk, south, clock());
    expect(order).toMatchObject({ mayAmend: true, mayAccept: true, findings: [] });
    expect((await orderFormView(desk.frontDesk, south, clock())).lines[0]).toMatchObject({
      quantity: "3",
      tolerance: "1",
    });
  });

  it("say what of them is still to come", async () => {
    const { lines } = await receivableView(desk.technician, north);
    expect(lines.map(({ toCome }) => toCome)).toEqual([1, 1]);
  });

  it("are not there for those who may not see them, and under a number that is none", async () => {
    const customer = desk.northern.actor;
    for (const question of [
      () => ordersView(customer, { show: "all" }, clock()),
      () => orderView(customer, north, clock()),
      () => sensorsView(customer, { show: "all" }, today),
      () => sensorView(customer, tags[0]!),
      () => receivableView(desk.signatory, north),
      () => orderFormView(desk.technician, south, clock()),
    ])
      expect(await refusalOf(question())).toMatchObject({ code: "not-permitted" });
    expect(await refusalOf(orderView(desk.frontDesk, "O-2026-9999", clock()))).toMatchObject({
      code: "not-found",
    });
    expect(await refusalOf(sensorView(desk.frontDesk, "T-999999"))).toMatchObject({ code: "not-found" });
  });
});

describe("a customer's orders", () => {
  it("are their own, and another's number is not there", async () => {
    expect((await portalOrdersView(desk.northern.actor)).orders.map(({ number }) => number)).toEqual([north]);
    expect((await portalOrderView(desk.northern.actor, north)).sensors.map(({ serial }) => serial)).toEqual([
      "A1",
      "B2",
    ]);
    expect(await refusalOf(portalOrderView(desk.southern.actor, north))).toMatchObject({ code: "not-found" });
    expect(await refusalOf(portalOrderView(desk.frontDesk, north))).toMatchObject({ code: "not-permitted" });
  });
});

describe("sensors", () => {
  it("are found by state, and by the beginning or end of their serial or tag", async () => {
    expect((await sensorsView(desk.technician, {}, today)).sensors).toHaveLength(2);
    expect((await sensorsView(desk.technician, { find: "b2" }, today)).sensors.map(({ tag }) => tag)).toEqual(
      [tags[1]],
    );
    expect((await sensorsView(desk.technician, { show: "issued" }, today)).sensors).toEqual([]);
    // A wildcard of the database is only a character here.
    expect((await sensorsView(desk.technician, { show: "all", find: "%" }, today)).sensors).toEqual([]);
  });

  it("show how they came and where they stand, to the end", async () => {
    const sensor = await sensorView(desk.frontDesk, tags[1]!);
    expect(sensor).toMatchObject({
      serial: "B2",
      state: "received",
      order: { number: north, position: 1 },
      intake: { receivedOn: "2026-03-03", takenInBy: "Ada Desk", polarity: "Correct", findings: [] },
      mayCollect: true,
      certificates: [],
    });
    expect(sensor.thread.map(({ state }) => state).join(" ")).toBe("done done now next next next next next");
    const input = { tag: tags[1]!, handedOver: "carrier" as const, reason: "sheath cracked" };
    await execute(collectSensor, desk.frontDesk, input, clock);
    const back = await sensorView(desk.frontDesk, tags[1]!);
    expect(back.thread.at(-1)).toMatchObject({ label: "Handed back", state: "stopped" });
    expect(back.history[0]?.sentence).toContain("without a certificate: sheath cracked");
    expect(back.mayCollect).toBe(false);
  });
});
