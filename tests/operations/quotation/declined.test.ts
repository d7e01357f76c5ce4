import { afterAll, beforeAll, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import type { Actor } from "@/lib/domain/staff/actor";
import { agreeInPortal } from "@/lib/operations/agreement/agree-in-portal";
import { execute } from "@/lib/operations/execute";
import { acceptOrder } from "@/lib/operations/order/accept";
import { makeQuotation } from "@/lib/operations/quotation/make";
import { portalOffersView } from "@/lib/views/agreement/portal-offers";
import { ordersView } from "@/lib/views/order/orders";
import { portalOrdersView, portalOrderView } from "@/lib/views/portal-orders";
import { offerStandingView } from "@/lib/views/quotation/offer-standing";
import { todayView } from "@/lib/views/today";
import { clock, type FrontDesk, openFrontDesk } from "../../support/front-desk";
import { offered, publicUrl, recordedPrices } from "../../support/offers";
import { answers, orderInput, recorded } from "../../support/orders";

let desk: FrontDesk;
beforeAll(async () => {
  desk = await openFrontDesk();
});
afterAll(() => desk.close());

const laboratory = { kind: "laboratory" } as const;

it("a declined offer is confirmed to the customer and stands before the desk until somebody has seen to it", async () => {
  await recordedPrices(desk);
  const open = { decisionRuleAgreedBy: "", decisionRuleAgreedOn: "", purchaseOrder: "" };
  const number = await recorded(desk, orderInput(desk.northern.customerId, open));
  const orderer: Actor =
    desk.northern.actor.kind === "customer"
      ? { ...desk.northern.actor, roles: ["customer", "customer-orderer"] }
      : desk.northern.actor;
  const decline = async (quotation: string, at = clock) => {
    const row = await inScope(laboratory, (tx) =>
      tx.quotation.findUniqueOrThrow({ where: { number: quotation } }),
    );
    const contentHash = Buffer.from(row.contentHash).toString("hex");
    const no = {
      quotation,
      contentHash,
      answer: "declined",
      purchaseOrder: "",
      remark: "Too dear",
    } as const;
    await execute(agreeInPortal, orderer, no, at);
  };
  const later = (minutes: number) => () => new Date(clock().getTime() + minutes * 60_000);
  const offerAgain = (minutes: number) =>
    execute(makeQuotation, desk.frontDesk, { number, validUntil: "2026-04-30", publicUrl }, later(minutes));
  const lists = async () => {
    const only = async (name: string) =>
      (await ordersView(desk.frontDesk, { only: name }, clock())).orders.some((one) => one.number === number);
    return { declined: await only("declined"), waiting: await only("waiting") };
  };
  const theirs = async () => (await portalOffersView(orderer, number, clock())).offers[0];
  const nexts = async () => [
    (await portalOrderView(orderer, number, clock())).progress.next,
    (await portalOrdersView(orderer, {}, clock())).orders.find((one) => one.number === number)?.progress.next,
  ];
  const first = await offered(desk, number);
  expect(new Set(await nexts())).toEqual(new Set(["Our offer waits for your answer."]));
  expect(await lists()).toEqual({ declined: false, waiting: true });
  expect(await theirs()).toMatchObject({ isDeclined: false, isWaiting: true });
  await decline(first.number, later(1));
  expect(new Set(await nexts())).toEqual(new Set(["You declined our offer: we get in touch with you."]));
  expect(await lists()).toEqual({ declined: true, waiting: false });
  expect(await theirs()).toMatchObject({ isDeclined: true, isWaiting: false });
  expect(await offerStandingView(desk.frontDesk, number, clock())).toMatchObject({
    ...{ standing: "declined", isNews: true, answer: { by: "Nora North", remark: "Too dear" } },
  });
  const today = (await todayView(desk.frontDesk, "2026-03-04")).find(({ key }) => key === "declined");
  expect(today).toMatchObject({ title: "Offers declined", href: "/orders?only=declined" });
  expect(today?.items.map(({ label }) => label)).toContain(number);
  // Another offer waits for the customer anew; declined as well, whoever accepts the order has read it.
  const second = await offerAgain(2);
  expect(await lists()).toEqual({ declined: false, waiting: true });
  await decline(second.number, later(3));
  expect(await lists()).toEqual({ declined: true, waiting: false });
  await inScope(laboratory, (tx) =>
    tx.order.update({
      where: { number },
      data: { decisionRuleAgreedBy: "Nora North", decisionRuleAgreedOn: new Date("2026-03-04") },
    }),
  );
  const review = { ...answers, number, toldCustomer: "on" } as const;
  await execute(acceptOrder, desk.frontDesk, review, later(4));
  expect(await lists()).toEqual({ declined: false, waiting: false });
  expect(await offerStandingView(desk.frontDesk, number, clock())).toBeNull();
});
