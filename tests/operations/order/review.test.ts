import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { nextNumber } from "@/lib/data/number/next-number";
import { loadDifferences } from "@/lib/data/order/difference-store";
import { loadOrder } from "@/lib/data/order/load-order";
import { loadOrderNotes } from "@/lib/data/order/note-store";
import { loadReviews } from "@/lib/data/order/review-store";
import { insertOrder } from "@/lib/data/order/write-order";
import { RecordOrderInput } from "@/lib/domain/order/schema";
import { execute } from "@/lib/operations/execute";
import { acceptOrder } from "@/lib/operations/order/accept";
import { amendOrder } from "@/lib/operations/order/amend";
import { raiseDifference } from "@/lib/operations/order/difference-raise";
import { settleDifference } from "@/lib/operations/order/difference-settle";
import { noteOrder } from "@/lib/operations/order/note";
import { takeOverOrder } from "@/lib/operations/order/take-over";
import { receiveSensors } from "@/lib/operations/sensor/receive";
import { orderView } from "@/lib/views/order/order";
import { receivableView } from "@/lib/views/order/receivable";
import { auditSentences, refusalOf } from "../../support/front-desk";
import { accepted, answers, intakeInput, lineInput, orderInput, recorded } from "../../support/orders";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

const input = (more = {}) => orderInput(bench.northern.customerId, more);
const accept = (number: string, more = {}) =>
  execute(acceptOrder, bench.frontDesk, { ...answers, number, toldCustomer: "on", ...more }, benchClock);
const stored = (number: string) => inLaboratory(async (tx) => (await loadOrder(tx, number)) ?? expect.fail());

describe("the review of an order", () => {
  it("is kept with its four answers, its remarks, and what the platform answered then", async () => {
    const lines = [{ ...lineInput, setpoints: "600 1000", tolerance: "own" as const, ownLimit: "0.1" }];
    const number = await recorded(bench, input({ lines }));
    await accept(number, { methodSuitableRemark: "comparison suits bare tails" });
    const order = await stored(number);
    const [review] = await inLaboratory((tx) => loadReviews(tx, order.id));
    expect(review).toMatchObject({
      sequence: 1,
      occasion: "acceptance",
      orderVersion: 1,
      reviewedAt: benchClock(),
      answers: { methodSuitable: { answer: "yes", remark: "comparison suits bare tails" } },
    });
    expect(review?.capability.map(({ setpoint, can, state }) => [setpoint, can, state])).toEqual([
      ["600 °C", "yes", "not-decidable"],
      ["1000 °C", "yes", "not-decidable"],
    ]);
    const event = await inLaboratory((tx) =>
      tx.auditEvent.findFirstOrThrow({ where: { action: "order.accepted", entityId: order.id } }),
    );
    expect(JSON.parse(event.payload)).toMatchObject({
      review: 1,
      undecidable: ["Line 1: 600 °C", "Line 1: 1000 °C"],
    });
  });

  it("leaves nothing of an acceptance that was refused", async () => {
    const number = await recorded(bench, input());
    expect(await refusalOf(accept(number, { version: 2 }))).toMatchObject({ code: "changed-meanwhile" });
    const order = await stored(number);
    expect(await inLaboratory((tx) => loadReviews(tx, order.id))).toEqual([]);
  });

  it("does not fit a line that goes to a provider, with nobody named", async () => {
    const provider = await inLaboratory((tx) =>
      tx.provider.findFirstOrThrow({ where: { state: "approved" } }),
    );
    const lines = [{ ...lineInput, providerId: provider.id }];
    const number = await recorded(bench, input({ lines }));
    expect(await refusalOf(accept(number))).toMatchObject({
      fields: { externalProviders: expect.stringContaining("approved") },
    });
    await accept(number, { externalProviders: "approved" });
    const nobody = [{ ...lineInput, providerId: "00000000-0000-4000-8000-000000000001" }];
    expect(await refusalOf(recorded(bench, input({ lines: nobody })))).toMatchObject({
      fields: { "lines.0.providerId": expect.any(String) },
    });
  });
});

describe("a difference between what is asked and what can be done", () => {
  it("stops the acceptance until it is settled with a person of the customer's", async () => {
    const number = await recorded(bench, input());
    const raised = { number, text: "1200 °C asked, 1150 °C possible" };
    const { differenceId } = await execute(raiseDifference, bench.frontDesk, raised, benchClock);
    expect((await refusalOf(accept(number))).message).toContain("“1200 °C asked, 1150 °C possible”");
    const settled = { number, differenceId, text: "1150 °C will do", agreedWith: "Nora North" };
    expect(
      await refusalOf(execute(settleDifference, bench.frontDesk, { ...settled, agreedWith: "" }, benchClock)),
    ).toMatchObject({ fields: { agreedWith: expect.any(String) } });
    await execute(settleDifference, bench.frontDesk, settled, benchClock);
    expect(await refusalOf(execute(settleDifference, bench.frontDesk, settled, benchClock))).toMatchObject({
      code: "changed-meanwhile",
    });
    const other = await recorded(bench, input());
    expect(
      await refusalOf(execute(settleDifference, bench.frontDesk, { ...settled, number: other }, benchClock)),
    ).toMatchObject({ code: "not-found" });
    await accept(number);
    const order = await stored(number);
    expect(await inLaboratory((tx) => loadDifferences(tx, order.id))).toMatchObject([
      { isSettled: true, settlement: { agreedWith: "Nora North" } },
    ]);
    expect((await auditSentences()).join()).not.toContain("Nora North");
  });

  it("is for the desk", async () => {
    const raised = { number: await recorded(bench, input()), text: "something" };
    expect(await refusalOf(execute(raiseDifference, bench.technician, raised, benchClock))).toMatchObject({
      code: "not-permitted",
    });
  });
});

describe("a note", () => {
  it("is kept as it was said, and marked whether the customer sees it", async () => {
    const number = await accepted(bench, input());
    const note = { number, kind: "told-customer" as const, text: "the furnace is being serviced" };
    await execute(noteOrder, bench.technician, { ...note, isForCustomer: "on" }, benchClock);
    await execute(noteOrder, bench.frontDesk, { ...note, kind: "note", text: "call back" }, benchClock);
    const order = await stored(number);
    expect(await inLaboratory((tx) => loadOrderNotes(tx, order.id))).toMatchObject([
      { kind: "told-customer", isForCustomer: true },
      { kind: "note", isForCustomer: false, text: "call back" },
    ]);
    expect(
      await refusalOf(execute(noteOrder, bench.frontDesk, { ...note, text: " " }, benchClock)),
    ).toMatchObject({
      fields: { text: expect.any(String) },
    });
    const customer = bench.northern.actor;
    expect(await refusalOf(execute(noteOrder, customer, note, benchClock))).toMatchObject({
      code: "not-permitted",
    });
  });
});

describe("the rule set of audited heat treatment", () => {
  it("is stored, takes in no sensor without lot and roll, and names rolls with one end here", async () => {
    const line = { ...lineInput, intervalChoice: "agreed" as const, largestInterval: "200" };
    const audited = { ruleSet: "audited-heat-treatment" as const, urgency: "express" as const };
    expect(await refusalOf(recorded(bench, input({ ...audited, lines: [lineInput] })))).toMatchObject({
      fields: { "lines.0.intervalChoice": expect.any(String) },
    });
    const number = await accepted(bench, input({ ...audited, lines: [line] }));
    expect(await stored(number)).toMatchObject(audited);
    const intake = intakeInput(number, "E1");
    expect(await refusalOf(execute(receiveSensors, bench.frontDesk, intake, benchClock))).toMatchObject({
      fields: { lot: expect.any(String) },
    });
    const identity = { lot: "L7", roll: "3", end: "first" as const };
    await execute(receiveSensors, bench.frontDesk, { ...intake, ...identity }, benchClock);
    const page = () => orderView(bench.frontDesk, number, benchClock());
    expect((await page()).openRolls).toMatchObject([{ name: "lot L7, roll 3", agreement: null }]);
    expect((await receivableView(bench.frontDesk, number)).openRolls).toMatchObject([{ roll: "3" }]);
    const second = { ...intakeInput(number, "E2"), ...identity, end: "second" as const };
    await execute(receiveSensors, bench.frontDesk, second, benchClock);
    expect((await page()).openRolls).toEqual([]);
  });
});

describe("a requested order", () => {
  const requested = async (more: object = {}) => {
    const number = await inLaboratory(async (tx) => {
      const made = `O-2026-${String(await nextNumber(tx, "order-2026")).padStart(4, "0")}`;
      const { customerId, ...draft } = RecordOrderInput.parse(
        input({ note: "please call before hot work", ...more }),
      );
      const person = bench.northern.actor;
      await insertOrder(tx, {
        number: made,
        customerId,
        draft,
        recordedById: person.kind === "customer" ? person.personId : "",
        recordedAt: benchClock(),
        came: { state: "requested", origin: "portal" },
      });
      return made;
    });
    return number;
  };

  it("is taken over by the desk, with what the customer wrote kept beside it", async () => {
    const number = await requested();
    expect(await refusalOf(accept(number))).toMatchObject({ code: "wrong-state" });
    const amended = { ...input({ note: "" }), number, version: 1 };
    expect(await refusalOf(execute(amendOrder, bench.frontDesk, amended, benchClock))).toMatchObject({
      message: expect.stringContaining("take it over first"),
    });
    await execute(takeOverOrder, bench.frontDesk, amended, benchClock);
    const order = await stored(number);
    expect(order).toMatchObject({ state: "recorded", version: 2, origin: "portal", note: "" });
    const [note] = await inLaboratory((tx) => loadOrderNotes(tx, order.id));
    expect(note).toMatchObject({ kind: "from-customer", isForCustomer: true, saidById: order.recordedById });
    expect(note?.text).toContain("setpoints: 300 500 700 900 1000 °C");
    expect(note?.text).toContain("please call before hot work");
    expect(await refusalOf(execute(takeOverOrder, bench.frontDesk, amended, benchClock))).toMatchObject({
      code: "wrong-state",
    });
  });

  it("shows before it is taken over where the class that is asked defines no tolerance", async () => {
    const lines = [{ ...lineInput, setpoints: "600 1300", tolerance: "astm-special" as const }];
    const rule = { guardBandRatio: "", decisionRuleAgreedBy: "", decisionRuleAgreedOn: "" };
    const number = await requested({ lines, ...rule, decisionRule: "none" });
    const { findings } = await orderView(bench.frontDesk, number, benchClock());
    expect(findings.map(({ message }) => message)).toContainEqual(
      "Line 1: ASTM E230/E230M, special of type K has no tolerance defined at 1300 °C; nothing can be stated there.",
    );
  });

  it("is taken over by one of two", async () => {
    const number = await requested();
    const take = () =>
      execute(takeOverOrder, bench.frontDesk, { ...input(), number, version: 1 }, benchClock);
    const outcomes = await Promise.allSettled([take(), take()]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(["fulfilled", "rejected"]);
  });
});
