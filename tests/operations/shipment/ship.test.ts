import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { ship } from "@/lib/operations/shipment/ship";
import { orderDocumentView } from "@/lib/views/quotation/order-document";
import { orderShipmentsView } from "@/lib/views/shipment/order-shipments";
import { sentView } from "@/lib/views/shipment/sent";
import { shipmentListView } from "@/lib/views/shipment/shipment-list";
import { auditSentences, clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { moveSensorsTo } from "../../support/issued-sensors";
import { publicUrl } from "../../support/offers";
import { accepted, lineInput, orderInput, received } from "../../support/orders";
import { pdfPages } from "../../support/pdf-text";

let desk: FrontDesk;
let number: string;
let tags: readonly string[];
beforeAll(async () => {
  desk = await openFrontDesk();
  number = await accepted(
    desk,
    orderInput(desk.northern.customerId, { lines: [{ ...lineInput, quantity: "4" }] }),
  );
  tags = await received(desk, number, "N-1\nN-2\nN-3\nN-4");
});
afterAll(() => desk.close());

const laboratory = { kind: "laboratory" } as const;
const parcel = { handedOver: "carrier", carrier: "Invented Parcels", reference: "IP 123" } as const;
const send = (which: readonly string[], more: object = {}, actor: Actor = desk.frontDesk) =>
  execute(ship, actor, { number, tags: [...which], ...parcel, publicUrl, ...more }, clock);
const orderState = async () =>
  (await inScope(laboratory, (tx) => tx.order.findUniqueOrThrow({ where: { number } }))).state;
const counted = () =>
  inScope(laboratory, async (tx) => [
    await tx.shipment.count(),
    await tx.custodyEvent.count({ where: { kind: { in: ["packed", "handed-over"] } } }),
    await tx.orderDocument.count(),
    await tx.mailMessage.count(),
  ]);

describe("a return shipment", () => {
  it("takes what is finished, and leaves nothing behind where it is refused", async () => {
    await moveSensorsTo(tags.slice(0, 2), "issued");
    await moveSensorsTo(tags.slice(2, 3), "loaded");
    const [first = "", second = "", loaded = "", shelf = ""] = tags;
    expect((await refusalOf(send([first], {}, desk.technician))).code).toBe("not-permitted");
    expect((await refusalOf(send([]))).fields).toHaveProperty("tags");
    expect((await refusalOf(send([first], { carrier: "" }))).fields).toHaveProperty("carrier");
    expect((await refusalOf(send([first, loaded]))).message).toContain(
      `${loaded}: This sensor is in the middle`,
    );
    expect((await refusalOf(send([first, shelf]))).fields).toHaveProperty("reason");
    expect((await refusalOf(send(["T-999999"]))).code).toBe("not-found");
    expect(
      (await refusalOf(send([first], { addressId: "00000000-0000-4000-8000-000000000000" }))).fields,
    ).toHaveProperty("addressId");
    expect(await counted()).toEqual([0, 0, 0, 0]);
    const states = (await orderShipmentsView(desk.frontDesk, number)).sensors.map(({ state }) => state);
    expect(states).toEqual(["issued", "issued", "loaded", "received"]);
    expect(second).not.toBe(first);
  });

  it("keeps back what is on hold", async () => {
    const [first = ""] = tags;
    const sensor = await inScope(laboratory, (tx) =>
      tx.sensor.findUniqueOrThrow({ where: { tag: first }, include: { line: true } }),
    );
    const place = {
      placedById: desk.frontDesk.kind === "staff" ? desk.frontDesk.personId : "",
      placedAt: clock(),
    };
    const { id } = await inScope(laboratory, (tx) =>
      tx.hold.create({
        data: {
          ...{ customerId: sensor.customerId, orderId: sensor.line.orderId, sensorId: sensor.id },
          ...{ kind: "condition", reason: "the voltmeter is in doubt", ...place },
        },
      }),
    );
    expect((await refusalOf(send([first]))).message).toContain("is on hold: the voltmeter is in doubt");
    expect((await orderShipmentsView(desk.frontDesk, number)).sensors[0]?.hold).toContain("voltmeter");
    await inScope(laboratory, (tx) =>
      tx.holdRelease.create({
        data: {
          ...{
            holdId: id,
            customerId: sensor.customerId,
            outcome: "go-on",
            reason: "it was right after all",
          },
          ...{ releasedById: place.placedById, releasedAt: clock() },
        },
      }),
    );
  });

  it("goes in parts: delivery note, custody, mail without serials, and the order is told", async () => {
    const [first = ""] = tags;
    const sent = await send([first]);
    expect(sent.number).toBe("S-2026-0001");
    const custody = await inScope(laboratory, (tx) =>
      tx.custodyEvent.findMany({ orderBy: { id: "desc" }, take: 2 }),
    );
    expect(custody.map(({ kind, toWhom }) => [kind, toWhom])).toEqual([
      ["handed-over", "Invented Parcels"],
      ["packed", ""],
    ]);
    const paper = await inScope(laboratory, (tx) =>
      tx.orderDocument.findFirstOrThrow({ where: { kind: "delivery-note" } }),
    );
    const text = (await pdfPages(paper.bytes)).join(" ");
    for (const part of [
      "Delivery note",
      "S-2026-0001",
      "N-1",
      "IP 123",
      "Works Road 1",
      "3 of this order",
      "PO 4711",
    ])
      expect(text).toContain(part);
    expect(text).not.toContain("N-2");
    // The customer reads its own paper, and no other customer does.
    expect((await orderDocumentView(desk.northern.actor, paper.id)).number).toBe(sent.number);
    expect((await refusalOf(orderDocumentView(desk.southern.actor, paper.id))).code).toBe("not-found");
    const mail = await inScope(laboratory, (tx) =>
      tx.mailMessage.findFirstOrThrow({ where: { kind: "shipped" } }),
    );
    expect(mail.subject).toContain("1 sensor of your order");
    expect(mail.body).not.toMatch(/N-1|T-0/);
    // Of the three that stay one is finished: it is not promised "when finished".
    expect(mail.body).toContain("Of the others of this order, 1 is finished too and follows");
    expect(text.replace(/\s+/g, " ")).toContain("3 of this order: 1 is finished already");
    expect(await sentView(desk.frontDesk, number, sent.number)).toEqual({
      ...{ number: "S-2026-0001", serials: ["N-1"], how: "with Invented Parcels, IP 123", finished: 1 },
      address: "Works Road 1",
    });
    expect(await sentView(desk.frontDesk, "O-none", sent.number)).toBeNull();
    expect(await sentView(desk.frontDesk, number, "S-none")).toBeNull();
    expect((await auditSentences()).join("\n")).toContain(
      `sent 1 sensor of order ${number} back with S-2026-0001, by carrier`,
    );
    expect((await shipmentListView(desk.technician)).shipments).toMatchObject([
      { number: "S-2026-0001", sensors: 1 },
    ]);
    expect((await refusalOf(send([first]))).code).toBe("wrong-state");
  });

  it("lets one of two parcels have a sensor that both are given at once", async () => {
    const [, second = ""] = tags;
    const both = await Promise.allSettled([send([second]), send([second])]);
    expect(both.filter(({ status }) => status === "fulfilled")).toHaveLength(1);
    const numbers = await inScope(laboratory, (tx) => tx.shipment.findMany({ orderBy: { number: "asc" } }));
    expect(numbers.map((row) => row.number)).toEqual(["S-2026-0001", "S-2026-0002"]);
  });

  it("completes the order with its last, one of them unmeasured and with a reason, handed over in person", async () => {
    const [, , loaded = "", shelf = ""] = tags;
    await inScope(laboratory, async (tx) => {
      await tx.sensor.update({ where: { tag: loaded }, data: { state: "received" } });
    });
    await moveSensorsTo([loaded], "issued");
    expect(await orderState()).toBe("accepted");
    await send([loaded, shelf], {
      handedOver: "in-person",
      carrier: "",
      toWhom: "their driver",
      reason: "Broken lead, not wanted any more",
    });
    expect(await orderState()).toBe("completed");
    const text = (
      await pdfPages(
        (
          await inScope(laboratory, (tx) =>
            tx.orderDocument.findFirstOrThrow({ orderBy: { number: "desc" } }),
          )
        ).bytes,
      )
    ).join(" ");
    expect(text).toContain("Nothing of this order");
    expect(text).toContain("Broken lead");
  });

  it("tells what lies here from what never came, and how many in the parcel were not measured", async () => {
    const lines = [{ ...lineInput, quantity: "10" }];
    const few = await accepted(desk, orderInput(desk.northern.customerId, { lines }));
    const [first = "", second = ""] = await received(desk, few, "F-1\nF-2\nF-3\nF-4");
    await moveSensorsTo([first], "issued");
    const reason = "Broken lead";
    const sent = await execute(
      ship,
      desk.frontDesk,
      { number: few, tags: [first, second], reason, ...parcel, publicUrl },
      clock,
    );
    const paper = await inScope(laboratory, (tx) =>
      tx.orderDocument.findFirstOrThrow({ where: { kind: "delivery-note", number: sent.number } }),
    );
    const text = (await pdfPages(paper.bytes)).join(" ").replace(/\s+/g, " ");
    expect(text).toContain("2 of this order; they follow when finished. 6 have not reached us.");
    const mail = await inScope(laboratory, (tx) =>
      tx.mailMessage.findFirstOrThrow({ where: { kind: "shipped", subject: { contains: few } } }),
    );
    expect(mail.body).toContain("6 have not reached us.");
    expect(mail.body).not.toContain(reason);
    // The state of the first was moved by hand: none was ever issued for it, so that neither has a certificate.
    expect(mail.body).toContain("None of them was measured");
  });

  it("holds no sensor of another order, in the database itself", async () => {
    const other = await accepted(desk, orderInput(desk.northern.customerId));
    const [tag = ""] = await received(desk, other, "M-1");
    const forged = inScope(laboratory, async (tx) => {
      const { id: sensorId, customerId } = await tx.sensor.findUniqueOrThrow({ where: { tag } });
      const { id: shipmentId } = await tx.shipment.findFirstOrThrow();
      await tx.shipmentSensor.create({ data: { shipmentId, sensorId, customerId } });
    });
    await expect(forged).rejects.toThrow(/another order/);
  });
});
