import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, expect, it } from "vitest";
import { CarriedOver } from "@/app/(portal)/portal/request/carried-over";
import { inScope } from "@/lib/data/in-scope";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { repeatOrder } from "@/lib/operations/order/repeat";
import { takeOverOrder } from "@/lib/operations/order/take-over";
import { requestWorkInPortal } from "@/lib/operations/portal/request-work";
import { orderFormView } from "@/lib/views/order/order-form";
import { requestFormView } from "@/lib/views/portal/request-form";
import { portalOrderView } from "@/lib/views/portal-orders";
import { orderCommerceView } from "@/lib/views/quotation/order-commerce";
import { auditSentences, clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { accepted, lineInput, orderInput, received } from "../../support/orders";

const tube = {
  ...lineInput,
  useFrom: "300",
  useTo: "1000",
  maximum: "1050",
  intervalChoice: "agreed",
  largestInterval: "250",
  tableStep: "10",
  report: "per-lot",
  language: "en-de",
} as const;
const bare = { ...tube, construction: "Bare wires, 500 mm", protection: "bare-wire" } as const;

let desk: FrontDesk;
let number: string;
beforeAll(async () => {
  desk = await openFrontDesk();
  const audited = { ruleSet: "audited-heat-treatment", uncertaintyDigits: "1", urgency: "express" } as const;
  number = await accepted(
    desk,
    orderInput(desk.northern.customerId, { ...audited, guardBandRatio: "0.83", lines: [tube, bare] }),
  );
  const { customerId } = desk.northern;
  const bills = { kind: "invoice", title: "Bills", addressLines: "Road 3", contactName: "" };
  await inScope({ kind: "laboratory" }, async (tx) => {
    const { id } = await tx.customerAddress.create({ data: { ...bills, customerId } });
    await tx.order.update({ where: { number }, data: { invoiceAddressId: id } });
  });
});
afterAll(() => desk.close());

const begun = () => requestFormView(desk.northern.actor, [], number);
const ask = (actor: Actor, input: object) => execute(requestWorkInPortal, actor, input as never, clock);
const orders = () => inScope({ kind: "laboratory" }, (tx) => tx.order.count());
const stored = (which: string) =>
  inScope({ kind: "laboratory" }, (tx) =>
    tx.order.findUniqueOrThrow({
      where: { number: which },
      include: { lines: { orderBy: { position: "asc" } } },
    }),
  );
/** What was agreed of a line that the form of a request cannot say. */
const agreed = ({ options, maximumCelsius, largestIntervalCelsius, intervalRule }: Line) => ({
  ...{ options: JSON.parse(options), maximumCelsius, largestIntervalCelsius, intervalRule },
});
type Line = Awaited<ReturnType<typeof stored>>["lines"][number];

it("carries over what was agreed and the form cannot say, and leaves open what belongs to one time", async () => {
  const { kinds, carried } = await begun();
  const made = await ask(desk.northern.actor, { kinds, repeats: carried?.number });
  const [before, after] = [await stored(number), await stored(made.number)];
  expect(after).toMatchObject({
    ...{ state: "requested", origin: "repeat", repeatsOrderId: before.id, urgency: "standard" },
    ...{ ruleSet: "audited-heat-treatment", decisionRule: "guarded", guardBandRatio: 0.83 },
    ...{ uncertaintyDigits: 1, decisionRuleAgreedBy: null, decisionRuleAgreedOn: null, promisedOn: null },
    ...{ purchaseOrder: null, acceptedAt: null, invoiceAddressId: before.invoiceAddressId },
  });
  expect(before.invoiceAddressId).not.toBeNull();
  expect(after.lines.map(agreed)).toEqual(before.lines.map(agreed));
  expect((await auditSentences()).slice(-2)).toEqual([
    `order.requested: requested work as order ${made.number}: 2 lines, 6 sensors`,
    `order.repeated: made order ${made.number} as ${number} was`,
  ]);
  expect((await orderCommerceView(desk.frontDesk, made.number)).repeats).toBe(number);
});

it("is taken over by the desk from a form that holds the terms, as the repeat of that order", async () => {
  const { kinds } = await begun();
  const made = await ask(desk.northern.actor, { kinds, repeats: number });
  const form = await orderFormView(desk.frontDesk, made.number, clock());
  expect(form).toMatchObject({
    ...{
      repeats: number,
      ruleSet: "audited-heat-treatment",
      decisionRule: "guarded",
      guardBandRatio: "0.83",
    },
    lines: [
      { intervalChoice: "agreed", largestInterval: "250", maximum: "1050", tableStep: "10" },
      { report: "per-lot", language: "en-de", construction: bare.construction },
    ],
  });
  const said = `Once more, as for ${number}: rule set audited heat treatment, decision rule guarded`;
  expect(form.requested).toContain(said);
  const { customer: _customer, openDifferences: _open, providers: _providers, ...typed } = form;
  await execute(takeOverOrder, desk.frontDesk, typed as never, clock);
  expect(await stored(made.number)).toMatchObject({
    ...{ state: "recorded", repeatsOrderId: (await stored(number)).id, ruleSet: "audited-heat-treatment" },
  });
  expect((await portalOrderView(desk.northern.actor, made.number)).notes[0]?.text).toContain(said);
});

it("keeps the order's own terms alone for sensors described anew, wherever the others stand", async () => {
  const [first, second] = (await begun()).kinds;
  const hotter = { ...first!, setpoints: "300 500 700 900 1000 1100" };
  const kinds = [{ ...second!, quantity: "1", useTo: "900", groupName: "zone 3" }, hotter];
  const made = await ask(desk.northern.actor, { kinds, repeats: number });
  const [before, after] = [await stored(number), await stored(made.number)];
  expect(after.ruleSet).toBe("audited-heat-treatment");
  expect(agreed(after.lines[0]!)).toEqual(agreed(before.lines[1]!));
  expect(after.lines[0]).toMatchObject({ quantity: 1, useToCelsius: 900, groupName: "zone 3" });
  expect(after.lines[1]).toMatchObject({ largestIntervalCelsius: null, maximumCelsius: null });
  expect(JSON.parse(after.lines[1]!.options)).toMatchObject({ report: "per-sensor", language: "en" });
});

it("is of an own order that was looked at; otherwise nothing is stored", async () => {
  const { kinds } = await begun();
  const waiting = await ask(desk.northern.actor, { kinds });
  const before = await orders();
  const refusals = [
    await refusalOf(ask(desk.southern.actor, { kinds, repeats: number })),
    await refusalOf(ask(desk.northern.actor, { kinds, repeats: "O-1999-0001" })),
    await refusalOf(ask(desk.northern.actor, { kinds, repeats: waiting.number })),
    await refusalOf(execute(repeatOrder, desk.frontDesk, { number: waiting.number }, clock)),
  ];
  expect(refusals.map(({ code }) => code)).toEqual(["not-found", "not-found", "wrong-state", "wrong-state"]);
  expect(refusals[0]?.message).toBe("The order to repeat is not here. Nothing was stored.");
  expect(refusals[1]).toEqual(refusals[0]);
  expect(await orders()).toBe(before);
  expect((await requestFormView(desk.northern.actor, [], waiting.number)).carried).toBeNull();
});

it("says beforehand what is carried over, where all of it is of one order", async () => {
  const { carried, ruleSet } = await begun();
  expect(ruleSet).toBe("audited-heat-treatment");
  const terms = `As for ${number}: rule set audited heat treatment, decision rule guarded acceptance (guard band w = 0.83 × U); the laboratory confirms it.`;
  expect(carried).toMatchObject({ number, terms });
  const shown = renderToStaticMarkup(createElement(CarriedOver, { carried }));
  for (const words of [
    terms,
    "Sensors 1: ",
    "At most 250 °C between setpoints",
    "Table of corrections every 10",
  ])
    expect(shown).toContain(words);
  expect(renderToStaticMarkup(createElement(CarriedOver, { carried: null }))).toBe("");
  expect((await requestFormView(desk.northern.actor, [])).carried).toBeNull();
  await received(desk, await accepted(desk, orderInput(desk.northern.customerId)), "N-1");
  await received(desk, await accepted(desk, orderInput(desk.northern.customerId)), "N-2");
  expect((await requestFormView(desk.northern.actor, ["N-1"])).carried?.terms).toContain("rule set none");
  expect((await requestFormView(desk.northern.actor, ["N-1", "N-2"])).carried).toBeNull();
});

it("may name the rule set itself; what that asks of a line is the desk's to fill in", async () => {
  const kinds = [{ ...lineInput, setpoints: "300 1000" }];
  const made = await ask(desk.northern.actor, { kinds, ruleSet: "audited-heat-treatment" });
  const form = await orderFormView(desk.frontDesk, made.number, clock());
  expect(form).toMatchObject({ ruleSet: "audited-heat-treatment", repeats: "" });
  expect(form.requested).toContain("Rule set: Audited heat treatment");
  const { kinds: again } = await begun();
  const none = await ask(desk.northern.actor, { kinds: again, repeats: number, ruleSet: "none" });
  expect((await stored(none.number)).ruleSet).toBe("none");
});
