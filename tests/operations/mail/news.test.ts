import { afterAll, beforeAll, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { askerRecipients } from "@/lib/data/mail/recipients";
import { configurePublicUrl } from "@/lib/data/public-url";
import { acknowledgeOrder } from "@/lib/operations/agreement/acknowledge";
import { execute } from "@/lib/operations/execute";
import { placeHoldOn } from "@/lib/operations/hold/place";
import { releaseHold } from "@/lib/operations/hold/release";
import { acceptOrder } from "@/lib/operations/order/accept";
import { cancelOrder } from "@/lib/operations/order/cancel";
import { changeOrder } from "@/lib/operations/order/change";
import { takeOverOrder } from "@/lib/operations/order/take-over";
import { requestWorkInPortal } from "@/lib/operations/portal/request-work";
import { givePromise } from "@/lib/operations/promise/give";
import { offerByLinkView } from "@/lib/views/agreement/offer-by-link";
import { orderFormView } from "@/lib/views/order/order-form";
import { portalOrderView } from "@/lib/views/portal-orders";
import { orderPromiseView } from "@/lib/views/promise/order-promise";
import { clock, type FrontDesk, openFrontDesk } from "@/tests/support/front-desk";
import { offered, publicUrl, recordedPrices } from "@/tests/support/offers";
import { accepted, answers, lineInput, orderInput, received } from "@/tests/support/orders";

let lab: FrontDesk;

beforeAll(async () => {
  lab = await openFrontDesk();
});
afterAll(() => lab?.close());

const letters = () =>
  inScope({ kind: "laboratory" }, (tx) =>
    tx.mailMessage.findMany({
      orderBy: [{ enqueuedAt: "asc" }, { kind: "asc" }],
      select: { id: true, kind: true, recipient: true, subject: true, body: true },
    }),
  );

/** What was written by this act: the clock stands still, so that times tell nothing. */
const writtenBy = async (act: () => Promise<unknown>) => {
  const before = new Set((await letters()).map(({ id }) => id));
  await act();
  return (await letters()).filter(({ id }) => !before.has(id));
};

it("writes nothing from a process that people do not reach", async () => {
  await accepted(lab, orderInput(lab.northern.customerId));
  expect(await letters()).toEqual([]);
});

it("writes to whoever may order, once an act, and nothing confidential", async () => {
  configurePublicUrl("https://lab.example.org/");
  const number = await accepted(lab, orderInput(lab.northern.customerId));
  const tags = await received(lab, number, "SN-1\nSN-2\nSN-3");
  const written = await letters();
  expect(written.map(({ kind, recipient }) => [kind, recipient])).toEqual([
    ["order-accepted", "nora.north@example.org"],
    ["sensors-received", "nora.north@example.org"],
  ]);
  expect(written[1]?.subject).toBe(`3 sensors of your order ${number} arrived`);
  for (const { body } of written) {
    expect(body).toMatch(/^Dear Nora North,\n/);
    expect(body).toContain(`https://lab.example.org/portal/orders/${number}`);
    for (const secret of [...tags, "SN-1", "PO 4711", "Type K"]) expect(body).not.toContain(secret);
  }
});

it("writes of a cancelled request and of a changed order, the reason in the portal alone", async () => {
  const kinds = [
    { ...lineInput, tolerance: "none", quantity: "4", setpoints: "600", temperatureUnit: "C" as const },
  ];
  const asked = await execute(requestWorkInPortal, lab.northern.actor, { kinds } as never, clock);
  const { number } = asked;
  const cancel = { number, reason: "The furnace is sold" };
  const written = await writtenBy(() => execute(cancelOrder, lab.frontDesk, cancel, clock));
  expect(written.map(({ kind, recipient, subject }) => [kind, recipient, subject])).toEqual([
    ["order-cancelled", "nora.north@example.org", `${number} was cancelled`],
  ]);
  for (const unsaid of ["sold", "still here"]) expect(written[0]?.body).not.toContain(unsaid);
  expect((await portalOrderView(lab.northern.actor, number)).cancelledBecause).toBe("The furnace is sold");

  const hot = { ...lineInput, setpoints: "300 1100" };
  const other = await accepted(lab, orderInput(lab.northern.customerId, { lines: [hot] }));
  const before = await portalOrderView(lab.northern.actor, other);
  expect(before).toMatchObject({ cancelledBecause: null, changedOn: null });
  expect(before.lines.map((line) => line.nothingStated)).toEqual([
    "No tolerance is defined there, so nothing can be stated: 1100 °C.",
  ]);
  const form = await orderFormView(lab.frontDesk, other, clock());
  const change = { ...form, ...answers, version: form.version, note: "secret wish", reason: "asked for" };
  const told = await writtenBy(() =>
    execute(
      changeOrder,
      lab.frontDesk,
      { ...change, agreedWith: "Nora North", toldCustomer: "on" } as never,
      clock,
    ),
  );
  expect(told.map(({ kind, recipient }) => [kind, recipient])).toEqual([
    ["order-changed", "nora.north@example.org"],
  ]);
  const after = await portalOrderView(lab.northern.actor, other);
  expect(after.changedOn).toBe(clock().toISOString().slice(0, 10));
  for (const secret of ["secret wish", "asked for"]) expect(told[0]?.body).not.toContain(secret);
});

it("writes of what goes back where something of a cancelled order is here", async () => {
  const number = await accepted(lab, orderInput(lab.northern.customerId));
  await received(lab, number, "SN-8");
  const cancel = { number, reason: "Not wanted any more" };
  const [letter] = await writtenBy(() => execute(cancelOrder, lab.frontDesk, cancel, clock));
  expect(letter?.body).toContain("Sensors of it that are still here go back to you.");
});

it("calls another day only what comes after a first", async () => {
  const number = await accepted(lab, orderInput(lab.northern.customerId));
  const promise = (promisedOn: string) =>
    writtenBy(async () => {
      const { shown } = await orderPromiseView(lab.frontDesk, number, null, clock());
      const given = { number, promisedOn, shown, reason: "as they asked" };
      await execute(givePromise, lab.frontDesk, given, clock);
    });
  const [first] = await promise("2026-12-01");
  expect(first?.subject).toBe(`A day for your order ${number}`);
  expect(first?.body).toContain(`we expect to have finished your order ${number} on 2026-12-01.`);
  const [second] = await promise("2026-12-08");
  expect(second?.subject).toBe(`Another day for your order ${number}`);
  expect(second?.body).toContain("we now expect");
});

it("writes once what stood still is settled, neither what nor why", async () => {
  const orderNumber = await accepted(lab, orderInput(lab.northern.customerId));
  const [tag = ""] = await received(lab, orderNumber, "SN-4");
  const place = { orderNumber, tag, kind: "condition" as const, reason: "tip bent" };
  const { holdId } = await execute(placeHoldOn, lab.frontDesk, { ...place, publicUrl } as never, clock);
  const end = { holdId, outcome: "go-on", reason: "straightened", disclaimer: "" };
  const written = await writtenBy(() => execute(releaseHold, lab.frontDesk, end as never, clock));
  expect(written.map(({ kind, recipient }) => [kind, recipient])).toEqual([
    ["hold-ended", "nora.north@example.org"],
  ]);
  for (const secret of [tag, "SN-4", "bent", "straightened"])
    expect(`${written[0]?.subject}${written[0]?.body}`).not.toContain(secret);
  expect(written[0]?.body).toContain("waits no longer");

  const again = await execute(placeHoldOn, lab.frontDesk, { ...place, publicUrl } as never, clock);
  const back = { ...end, holdId: again.holdId, outcome: "return-unmeasured", awaitsAnother: true };
  const [letter] = await writtenBy(() => execute(releaseHold, lab.frontDesk, back as never, clock));
  expect(letter?.body).toContain("waits for another sensor of yours");
  expect(letter?.body).not.toContain("waits no longer");
});

it("writes a letter about an order to whoever asked for the work, and to the address on record", async () => {
  const kinds = [{ ...lineInput, tolerance: "none", setpoints: "600" }];
  const { number } = await execute(requestWorkInPortal, lab.northern.actor, { kinds } as never, clock);
  const amended = { ...orderInput(lab.northern.customerId), number, version: 1 };
  await execute(takeOverOrder, lab.frontDesk, amended, clock);
  await recordedPrices(lab);
  const offers = await writtenBy(() => offered(lab, number));
  expect(offers.map(({ kind, recipient }) => `${kind} ${recipient}`).toSorted()).toEqual([
    "quotation desk@example.org",
    "quotation nora.north@example.org",
  ]);
  const links = offers.map(({ body }) => /agree\/(\S+)/.exec(body)?.[1] ?? "");
  expect(new Set(links).size).toBe(2);
  for (const link of links) expect((await offerByLinkView(link, clock())).kind).toBe("open");
  await execute(acceptOrder, lab.frontDesk, { ...answers, version: 2, number, toldCustomer: "on" }, clock);
  const papers = await writtenBy(() =>
    execute(acknowledgeOrder, lab.frontDesk, { number, publicUrl }, clock),
  );
  const question = { text: "Which end?", choices: ["this", "that"] };
  const hold = { orderNumber: number, tag: "", kind: "condition", reason: "unclear", question, publicUrl };
  const asked = await writtenBy(() => execute(placeHoldOn, lab.frontDesk, hold as never, clock));
  for (const letters of [papers, asked])
    expect(letters.map(({ recipient }) => recipient).toSorted()).toEqual([
      "desk@example.org",
      "nora.north@example.org",
    ]);
});

it("writes one letter where the two are one mailbox, and none to whoever has left", async () => {
  const { actor, customerId } = lab.northern;
  const personId = actor.kind === "customer" ? actor.personId : "";
  const recipients = (ids: readonly string[]) =>
    inScope({ kind: "laboratory" }, async (tx) =>
      (await askerRecipients(tx, customerId, ids)).map(({ name, email }) => [name, email]),
    );
  const record = ["Nora North", "desk@example.org"];
  expect(await recipients([personId])).toEqual([["Nora North", "nora.north@example.org"], record]);
  // Somebody of the laboratory, or of another customer, asked for nothing.
  const { frontDesk, southern } = lab;
  const others = [frontDesk, southern.actor].flatMap((one) => ("personId" in one ? [one.personId] : []));
  expect(await recipients(others)).toEqual([record]);
  const email = (to: string) =>
    inScope({ kind: "laboratory" }, (tx) =>
      tx.person.update({ where: { id: personId }, data: { email: to } }),
    );
  await email("desk@example.org");
  expect(await recipients([personId])).toEqual([["Nora North", "desk@example.org"]]);
  await email("nora.north@example.org");
});

it("writes to the address on record where nobody has an account", async () => {
  await inScope({ kind: "laboratory" }, (tx) =>
    tx.person.updateMany({ where: { customerId: lab.southern.customerId }, data: { active: false } }),
  );
  const written = await writtenBy(() => accepted(lab, orderInput(lab.southern.customerId)));
  expect(written.map(({ recipient, body }) => [recipient, body.split("\n")[0]])).toEqual([
    ["desk@example.org", "Dear Saul South,"],
  ]);
});

it("goes back with what it tells", async () => {
  const number = await accepted(lab, orderInput(lab.northern.customerId));
  // One serial number twice: all of it is refused.
  const written = await writtenBy(() =>
    expect(received(lab, number, "SN-9\nSN-9")).rejects.toThrow("Some fields need another look"),
  );
  expect(written).toEqual([]);
});
