import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, expect, it } from "vitest";
import { Notes } from "@/app/(portal)/portal/orders/[number]/notes";
import { inScope } from "@/lib/data/in-scope";
import { configurePublicUrl } from "@/lib/data/public-url";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { noteOrder } from "@/lib/operations/order/note";
import { takeOverOrder } from "@/lib/operations/order/take-over";
import { addAddress } from "@/lib/operations/portal/add-address";
import { requestWorkInPortal } from "@/lib/operations/portal/request-work";
import { orderReturnAddressView } from "@/lib/views/order/return-address";
import { requestFormView } from "@/lib/views/portal/request-form";
import { portalOrderView } from "@/lib/views/portal-orders";
import { orderShipmentsView } from "@/lib/views/shipment/order-shipments";
import { codeOf } from "../../support/code-of";
import { auditSentences, clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { accepted, orderInput, received } from "../../support/orders";

let desk: FrontDesk;
beforeAll(async () => {
  desk = await openFrontDesk();
  configurePublicUrl("https://lab.example.org/");
});
afterAll(() => desk.close());

const kind = {
  typeLetter: "K",
  construction: "Metal-sheathed, 3 mm, 500 mm",
  protection: "metal-sheath",
  quantity: "4",
  temperatureUnit: "F",
  setpoints: "600 1200",
  tolerance: "1",
} as const;
const ask = (actor: Actor, more: object = {}) =>
  execute(requestWorkInPortal, actor, { kinds: [kind], ...more }, clock);
const personOf = (actor: Actor): string => (actor.kind === "customer" ? actor.name : "");
const orders = () => inScope({ kind: "laboratory" }, (tx) => tx.order.count());

it("becomes an order that is asked for, in the customer's own unit, with a letter to each side", async () => {
  const { number } = await ask(desk.northern.actor, { purchaseOrder: "PO 1", wishes: "Soon, please." });
  const order = await inScope({ kind: "laboratory" }, (tx) =>
    tx.order.findUniqueOrThrow({ where: { number }, include: { lines: { include: { setpoints: true } } } }),
  );
  expect(order).toMatchObject({
    ...{ state: "requested", origin: "portal", customerId: desk.northern.customerId, purchaseOrder: "PO 1" },
    ...{ note: "Soon, please.", acceptedAt: null },
  });
  expect(order.lines[0]).toMatchObject({ temperatureUnit: "F", quantity: 4, toleranceClass: "1" });
  expect(order.lines[0]!.setpoints.map(({ typed }) => typed)).toEqual(["600", "1200"]);
  const mails = await inScope({ kind: "laboratory" }, (tx) =>
    tx.mailMessage.findMany({ orderBy: { kind: "asc" }, select: { kind: true, recipient: true } }),
  );
  expect(mails).toEqual([
    { kind: "order-requested", recipient: "ada.desk@example.org" },
    { kind: "request-received", recipient: "nora.north@example.org" },
  ]);
  expect(await auditSentences()).toContain(
    `order.requested: requested work as order ${number}: 1 line, 4 sensors`,
  );
  expect((await portalOrderView(desk.northern.actor, number)).number).toBe(number);
  expect(await codeOf(portalOrderView(desk.southern.actor, number))).toBe("not-found");
});

it("takes no setpoints where the range of use lets the laboratory propose them, and refuses neither", async () => {
  const proposed = { ...kind, setpoints: "", useFrom: "500", useTo: "1500" };
  expect(await codeOf(ask(desk.northern.actor, { kinds: [proposed] }))).toBe("answered");
  const before = await orders();
  const refused = await refusalOf(ask(desk.northern.actor, { kinds: [kind, { ...kind, setpoints: "" }] }));
  expect(Object.keys(refused.fields ?? {})).toEqual(["kinds.1.setpoints"]);
  const wrong = await refusalOf(
    ask(desk.northern.actor, { kinds: [{ ...kind, quantity: "0", setpoints: "9000" }] }),
  );
  expect(Object.keys(wrong.fields ?? {}).toSorted()).toEqual(["kinds.0.quantity"]);
  const hidden = await refusalOf(
    ask(desk.northern.actor, { kinds: [{ ...kind, construction: "3\u202e mm" }], purchaseOrder: "P\u200bO" }),
  );
  expect(Object.keys(hidden.fields ?? {}).toSorted()).toEqual(["kinds.0.construction", "purchaseOrder"]);
  expect(await orders()).toBe(before);
});

it("goes to an address of one's own alone", async () => {
  const works = { kind: "delivery", title: "Works 2", addressLines: "Road 2", contactName: "" } as const;
  const { id } = await execute(addAddress, desk.northern.actor, works, clock);
  const invoice = await execute(addAddress, desk.northern.actor, { ...works, kind: "invoice" }, clock);
  const foreign = await refusalOf(ask(desk.southern.actor, { deliveryAddressId: id }));
  expect(foreign.fields).toHaveProperty("deliveryAddressId");
  expect(await codeOf(ask(desk.northern.actor, { deliveryAddressId: invoice.id }))).toBe("invalid");
  const { number } = await ask(desk.northern.actor, { deliveryAddressId: id });
  const order = await inScope({ kind: "laboratory" }, (tx) =>
    tx.order.findUniqueOrThrow({ where: { number } }),
  );
  expect(order.deliveryAddressId).toBe(id);
  // The desk sees where the sensors go back to, and the parcel begins with it.
  const seen = { id, title: "Works 2", address: "Road 2", givenUp: "" };
  expect(await orderReturnAddressView(desk.frontDesk, number)).toEqual(seen);
  const parcel = await orderShipmentsView(desk.frontDesk, number);
  expect(parcel.returnTo).toEqual(seen);
  expect(parcel.addresses.map((address) => address.id)).toContain(id);
  const form = await requestFormView(desk.northern.actor, []);
  expect(form.addresses.map((address) => address.id)).toEqual([id]);
  expect((await requestFormView(desk.southern.actor, [])).addresses).toEqual([]);
  // Given up meanwhile: the customer's own stands in, and it is said.
  await inScope({ kind: "laboratory" }, (tx) =>
    tx.customerAddress.update({ where: { id }, data: { active: false } }),
  );
  expect(await orderReturnAddressView(desk.frontDesk, number)).toMatchObject({
    id: null,
    givenUp: "Works 2",
  });
});

it("stays as it was written where the desk takes it over, by whoever wrote it", async () => {
  const { number } = await ask(desk.northern.actor, { wishes: "Soon, please." });
  const taken = { ...orderInput(desk.northern.customerId), number, version: 1 };
  await execute(takeOverOrder, desk.frontDesk, taken, clock);
  const told = { number, kind: "told-customer", text: "We begin on Monday.", isForCustomer: true } as const;
  await execute(noteOrder, desk.frontDesk, told, clock);
  const heard = { ...told, kind: "from-customer", text: "Monday suits them." } as const;
  await execute(noteOrder, desk.frontDesk, heard, clock);
  const { notes } = await portalOrderView(desk.northern.actor, number);
  // What the desk wrote down for them names nobody of the laboratory.
  expect(notes.map(({ who }) => who)).toEqual([`you, ${personOf(desk.northern.actor)}`, "we", "you"]);
  expect(notes[0]?.text).toContain("Soon, please.");
  const shown = renderToStaticMarkup(createElement(Notes, { notes }));
  expect(shown).toMatch(/^<ul class="plain-list"><li><p><time[^>]*>2026-\d\d-\d\d<\/time>, you, /);
});

it("is for whoever may order", async () => {
  const { actor } = desk.northern;
  const reader: Actor = actor.kind === "customer" ? { ...actor, roles: ["customer"] } : actor;
  expect(await codeOf(ask(reader))).toBe("not-permitted");
  expect(await codeOf(ask(desk.frontDesk))).toBe("not-permitted");
  expect(await codeOf(requestFormView(reader, []))).toBe("not-permitted");
});

it("begins with what was ordered last where sensors come again, and never with another customer's", async () => {
  const number = await accepted(desk, orderInput(desk.northern.customerId));
  await received(desk, number, "N-1\nN-2");
  const again = await requestFormView(desk.northern.actor, ["N-2", "N-1", "unknown"]);
  expect(again.kinds).toMatchObject([
    { typeLetter: "K", quantity: "2", setpoints: "300  500  700  900  1000", tolerance: "1" },
  ]);
  expect(again.wishes).toBe("Once more, please: N-1, N-2");
  expect(await requestFormView(desk.southern.actor, ["N-1"])).toMatchObject({ kinds: [], wishes: "" });
  const whole = await requestFormView(desk.northern.actor, [], number);
  expect(whole.kinds).toMatchObject([{ typeLetter: "K", quantity: "3" }]);
  expect(await codeOf(requestFormView(desk.southern.actor, [], number))).toBe("not-found");
  const sent = await ask(desk.northern.actor, { kinds: again.kinds, wishes: again.wishes });
  expect(sent.number).not.toBe(number);
});
