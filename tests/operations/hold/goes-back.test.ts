import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { handBacksOf } from "@/lib/data/hold/hand-backs-of";
import { inScope, type Tx } from "@/lib/data/in-scope";
import { loadOrder } from "@/lib/data/order/load-order";
import { loadPlannedOrder } from "@/lib/data/promise/plan-store";
import { reservedHours } from "@/lib/data/sql/reserved-hours";
import { anotherChoice, conditionChoices, disposeChoice, returnChoice } from "@/lib/domain/question/labels";
import { actorIdOf } from "@/lib/domain/staff/actor";
import { disposeSensor } from "@/lib/operations/custody/dispose";
import { execute } from "@/lib/operations/execute";
import { placeHoldOn } from "@/lib/operations/hold/place";
import { releaseHold } from "@/lib/operations/hold/release";
import { cancelOrder } from "@/lib/operations/order/cancel";
import { answerAtDesk } from "@/lib/operations/question/answer-at-desk";
import { ship } from "@/lib/operations/shipment/ship";
import { storageView } from "@/lib/views/custody/storage";
import { sensorHoldsView } from "@/lib/views/hold/holds-on";
import { orderView } from "@/lib/views/order/order";
import { ordersView } from "@/lib/views/order/orders";
import { orderPartsView } from "@/lib/views/order/parts";
import { receivableView } from "@/lib/views/order/receivable";
import { portalOrdersView, portalOrderView } from "@/lib/views/portal-orders";
import { sensorView } from "@/lib/views/sensor/sensor";
import { sensorsView } from "@/lib/views/sensor/sensors";
import { orderShipmentsView } from "@/lib/views/shipment/order-shipments";
import { shipmentListView } from "@/lib/views/shipment/shipment-list";
import { todayView } from "@/lib/views/today";
import { auditSentences, clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { furnaceRow } from "../../support/in-service";
import { moveSensorsTo } from "../../support/issued-sensors";
import { accepted, lineInput, orderInput, received } from "../../support/orders";

/** What is not measured after all: it stands in every list of what goes back, in none of what is measured, and the order ends. */

let desk: FrontDesk;
beforeAll(async () => {
  desk = await openFrontDesk();
});
afterAll(() => desk.close());

const publicUrl = "https://laboratory.example";
const today = "2026-03-04";
const inLaboratory = <T>(work: (tx: Tx) => Promise<T>) => inScope({ kind: "laboratory" }, work);
const ordered = (quantity: number) =>
  accepted(
    desk,
    orderInput(desk.northern.customerId, { lines: [{ ...lineInput, quantity: String(quantity) }] }),
  );

/** On hold, asked, and answered at the desk. */
const answered = async (orderNumber: string, tag: string, choice: string) => {
  const hold = { orderNumber, tag, kind: "condition" as const, reason: "tip bent", publicUrl };
  const question = { text: "How shall we go on?", choices: [...conditionChoices] };
  const placed = await execute(placeHoldOn, desk.frontDesk, { ...hold, question }, clock);
  const said = { questionId: placed.questionId!, saidByName: "Nora North", choice };
  await execute(answerAtDesk, desk.frontDesk, said, clock);
  return placed.holdId;
};
const end = (holdId: string, more: object = {}) =>
  execute(
    releaseHold,
    desk.frontDesk,
    { holdId, outcome: "return-unmeasured" as const, reason: "as answered", ...more },
    clock,
  );
const send = (number: string, tags: readonly string[]) =>
  execute(
    ship,
    desk.frontDesk,
    { number, tags: [...tags], handedOver: "in-person", reason: "not measured", publicUrl },
    clock,
  );
const orderState = async (number: string) =>
  (await inLaboratory((tx) => tx.order.findUniqueOrThrow({ where: { number } }))).state;

/** Sensors that the order's promise reckons furnace hours for. */
const toMeasure = async (number: string) =>
  (await inLaboratory((tx) => loadPlannedOrder(tx, number)))?.groups.reduce(
    (sum, { sensors }) => sum + sensors,
    0,
  );

/** Hours for an order in a furnace of its own, as a promise takes them. */
const reserve = (number: string) =>
  inLaboratory(async (tx) => {
    const { id: orderId } = await tx.order.findUniqueOrThrow({ where: { number } });
    const [tag, takenById] = [`FUR-${number}`, actorIdOf(desk.frontDesk)];
    const equipmentId = await furnaceRow(tx, tag, takenById);
    const { id: furnaceId } = await tx.furnace.create({
      data: {
        ...{ tag, name: "Invented", maker: "Invented", serial: number, equipmentId },
        ...{ minimumCelsius: 300, maximumCelsius: 1200, boreMillimetre: 60, lengthMillimetre: 900 },
      },
    });
    const [startsAt, endsAt] = [40, 41].map((days) => new Date(clock().getTime() + days * 86_400_000));
    const slot = { furnaceId, orderId, startsAt: startsAt!, endsAt: endsAt! };
    await tx.furnaceSlot.create({ data: { ...slot, takenById, takenAt: clock() } });
  });
/** What its hours are still for. */
const owed = async (number: string) =>
  (await inLaboratory((tx) => reservedHours(tx, clock()))).find(({ order }) => order === number)?.owed;

const tagsOf = async (only: "load" | "hand-back") =>
  (await sensorsView(desk.frontDesk, { only }, today)).sensors.map(({ tag }) => tag);
const waitingFor = async (actor: FrontDesk["frontDesk"], key: string) =>
  (await todayView(actor, today)).find((list) => list.key === key);
const toSend = async () =>
  (await ordersView(desk.frontDesk, { show: "all", only: "send" }, clock())).orders.map(
    ({ number }) => number,
  );
const keptAfter = async (days: number) =>
  (await storageView(desk.frontDesk, new Date(clock().getTime() + days * 86_400_000))).kept;

describe("a sensor that goes back unmeasured", () => {
  it("is nobody's to load and the desk's to send back, and the order completes with it", async () => {
    const number = await ordered(2);
    const [back = "", other = ""] = await received(desk, number, "G1\nG2");
    const holdId = await answered(number, back, returnChoice);
    // On hold it waits: neither to load nor to hand back.
    expect([await tagsOf("load"), await tagsOf("hand-back")]).toEqual([[other], []]);
    expect((await waitingFor(desk.technician, "load"))?.count).toBe(1);
    expect((await orderView(desk.frontDesk, number, clock())).next).toBe("A technician loads 1 sensor.");
    const held = (await portalOrdersView(desk.northern.actor)).orders.find((one) => one.number === number);
    expect(held?.progress.next).toBe("We measure your sensors.");
    await end(holdId);

    expect([await tagsOf("load"), await tagsOf("hand-back")]).toEqual([[other], [back]]);
    expect((await waitingFor(desk.technician, "load"))?.items.map(({ label }) => label)).toEqual([other]);
    const handBack = await waitingFor(desk.frontDesk, "hand-back");
    expect(handBack).toMatchObject({ count: 1, href: "/sensors?only=hand-back" });
    expect(handBack?.items[0]).toMatchObject({
      label: back,
      detail: expect.stringContaining("not measured"),
    });
    expect(await toSend()).toEqual([number]);
    expect((await shipmentListView(desk.frontDesk)).ready).toMatchObject([
      { number, sensors: 1, unmeasured: 1 },
    ]);
    expect((await orderPartsView(desk.frontDesk, number))[0]?.sensors[0]?.next).toMatch(
      /^Not measured.*send it back/,
    );
    expect((await orderShipmentsView(desk.frontDesk, number)).sensors).toMatchObject([
      { tag: back, handBack: "unmeasured", why: "tip bent", hold: "" },
      { tag: other, handBack: null, why: "", hold: "" },
    ]);
    expect(await sensorView(desk.frontDesk, back)).toMatchObject({ handBack: "unmeasured" });
    expect((await orderView(desk.frontDesk, number, clock())).next).toBe("A technician loads 1 sensor.");
    expect(await toMeasure(number)).toBe(1);
    expect(await keptAfter(29)).toEqual([]);
    expect(await keptAfter(31)).toMatchObject([{ tag: back, since: today, days: 31 }]);

    await moveSensorsTo([other], "issued");
    await send(number, [back, other]);
    expect(await orderState(number)).toBe("completed");
    // Neither of them has a certificate here, and what has none is not counted as if it had.
    const shown = await portalOrderView(desk.northern.actor, number);
    expect(shown.sensors.find(({ tag }) => tag === back)?.where).toBe("Handed back without a certificate");
    expect(shown.certified).toBe(0);
    expect([await tagsOf("hand-back"), await toSend(), await keptAfter(31)]).toEqual([[], [], []]);
  });

  it("is disposed of where the customer answered so, from where the answer is read", async () => {
    const number = await ordered(1);
    const [tag = ""] = await received(desk, number, "D1");
    await end(await answered(number, tag, disposeChoice));
    const on = await sensorHoldsView(desk.frontDesk, tag);
    expect(on).toMatchObject({ mayDispose: true, holds: [{ isOnShelf: true }] });
    expect((await sensorHoldsView(desk.technician, tag)).mayDispose).toBe(false);
    await execute(disposeSensor, desk.frontDesk, { tag, instruction: disposeChoice }, clock);
    expect((await sensorHoldsView(desk.frontDesk, tag)).holds[0]?.isOnShelf).toBe(false);
    expect(await orderState(number)).toBe("completed");
  });
});

describe("the sensors of a cancelled order", () => {
  it("all go back, whatever was still asked about them", async () => {
    const number = await ordered(2);
    const tags = await received(desk, number, "K1\nK2");
    const hold = { orderNumber: number, tag: tags[0]!, kind: "condition" as const, publicUrl };
    await execute(placeHoldOn, desk.frontDesk, { ...hold, reason: "dented" }, clock);
    await execute(cancelOrder, desk.frontDesk, { number, reason: "not wanted any more" }, clock);
    expect(await tagsOf("load")).toEqual([]);
    expect((await tagsOf("hand-back")).toSorted()).toEqual(tags);
    expect(await toSend()).toEqual([number]);
    expect((await orderShipmentsView(desk.frontDesk, number)).sensors.map((one) => one.handBack)).toEqual([
      "cancelled",
      "cancelled",
    ]);
    expect((await orderPartsView(desk.frontDesk, number))[0]?.sensors[0]?.next).toContain("cancelled");
    expect((await sensorView(desk.frontDesk, tags[0]!)).next).toContain("cancelled");
    // Since the day of the cancellation, by the clock of the log.
    const aMonthOn = new Date(Date.now() + 31 * 86_400_000);
    expect((await storageView(desk.frontDesk, aMonthOn)).kept.map(({ tag }) => tag)).toEqual(tags);
    const north = await portalOrderView(desk.northern.actor, number);
    const listed = async () =>
      (await portalOrdersView(desk.northern.actor, { onlyOpen: true })).orders.filter(
        (one) => one.number === number,
      );
    expect(north.promisedOn).toBeNull();
    expect(north.sensors.map(({ where }) => where)).toEqual(
      tags.map(() => "Not measured, goes back to you: the order was cancelled"),
    );
    expect((await listed())[0]?.progress.next).toContain("2 sensors of yours are still here");
    expect((await orderView(desk.frontDesk, number, clock())).thread.map(({ label }) => label)).toContain(
      "Cancelled",
    );
    await send(number, tags);
    expect(await listed()).toEqual([]);
    expect([await tagsOf("hand-back"), await orderState(number)]).toEqual([[], "cancelled"]);
  });
});

describe("another sensor in the place of one that goes back", () => {
  it("has room in its line, and the order waits for it even where nothing else is left", async () => {
    const number = await ordered(1);
    const [bent = ""] = await received(desk, number, "W1");
    const holdId = await answered(number, bent, anotherChoice);
    expect((await refusalOf(end(holdId, { outcome: "go-on", awaitsAnother: true }))).fields).toHaveProperty(
      "awaitsAnother",
    );
    await end(holdId, { awaitsAnother: true });
    expect((await auditSentences()).at(-1)).toContain("another sensor is awaited in its place");
    // The furnace still has one sensor to measure: the other one.
    await reserve(number);
    expect([await toMeasure(number), await owed(number)]).toEqual([1, 1]);
    await send(number, [bent]);
    expect([await orderState(number), await toMeasure(number), await owed(number)]).toEqual([
      "accepted",
      1,
      1,
    ]);

    const waiting = await orderView(desk.frontDesk, number, clock());
    expect(waiting).toMatchObject({ awaited: 1, received: 0, mayReceive: true });
    expect(waiting.next).toBe(
      "The front desk takes 1 sensor in: 1 sensor in the place of what goes back or went back unmeasured.",
    );
    expect(waiting.thread.find(({ state }) => state === "now")?.label).toBe("Received");
    expect(waiting.lines[0]?.sensors[0]).toMatchObject({ tag: bent, isReplaced: true });
    const expected = await ordersView(desk.frontDesk, { only: "expected" }, clock());
    expect(expected.orders.map((order) => [order.number, order.received])).toEqual([[number, 0]]);
    expect((await receivableView(desk.frontDesk, number)).lines[0]).toMatchObject({ received: 0, toCome: 1 });
    const shown = await portalOrderView(desk.northern.actor, number);
    expect(shown.progress.next).toContain("We wait for another sensor in the place of W1.");
    expect(shown.counts).toBe("1 ordered, 0 have come, 1 awaited in the place of what is not measured");
    expect(shown.sensors[0]?.where).toBe("Handed back unmeasured; we wait for another sensor in its place");
    expect(shown.answered).toMatchObject([{ serial: "W1", choice: anotherChoice, saidByName: "Nora North" }]);
    const listed = (await portalOrdersView(desk.northern.actor, { onlyOpen: true })).orders;
    expect(listed.find((one) => one.number === number)?.progress.next).toContain(
      "the one that is not measured",
    );

    const [good = ""] = await received(desk, number, "W2");
    expect((await refusalOf(received(desk, number, "W3"))).fields?.serials).toContain("Line 1 orders 1, 1");
    expect((await orderView(desk.frontDesk, number, clock())).awaited).toBe(0);
    expect(await tagsOf("load")).toEqual([good]);
    await moveSensorsTo([good], "issued");
    await send(number, [good]);
    expect(await orderState(number)).toBe("completed");
  });

  it("may come before the other has left, which the order then waits for", async () => {
    const number = await ordered(1);
    const [bent = ""] = await received(desk, number, "V1");
    await end(await answered(number, bent, anotherChoice), { awaitsAnother: true });
    const [good = ""] = await received(desk, number, "V2");
    await moveSensorsTo([good], "issued");
    await send(number, [good]);
    expect(await orderState(number), "the bent one is still here").toBe("accepted");
    expect((await orderView(desk.frontDesk, number, clock())).next).toBe(
      "The front desk hands 1 sensor back.",
    );
    await send(number, [bent]);
    expect(await orderState(number)).toBe("completed");
  });
});

it("is the same rule in the lists as of one order", async () => {
  const number = await ordered(4);
  const tags = await received(desk, number, "R1\nR2\nR3\nR4");
  await end(await answered(number, tags[0]!, returnChoice));
  await answered(number, tags[1]!, returnChoice);
  await moveSensorsTo(tags.slice(1, 3), "issued");
  const orders = await inLaboratory((tx) => tx.order.findMany({ select: { number: true } }));
  const told = await inLaboratory(async (tx) => {
    const found: string[] = [];
    for (const one of orders) {
      const order = await loadOrder(tx, one.number);
      if (!order) continue;
      const backs = await handBacksOf(tx, order);
      for (const { id, tag } of order.lines.flatMap(({ sensors }) => sensors))
        if (backs.has(id)) found.push(tag);
    }
    return found;
  });
  // Held although it has its certificate: not now. And the fourth is to be measured.
  expect(told.toSorted()).toEqual([tags[0], tags[2]].toSorted());
  expect((await tagsOf("hand-back")).toSorted()).toEqual(told.toSorted());
});
