import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadOpenChanges } from "@/lib/data/order/change-store";
import { loadOrder } from "@/lib/data/order/load-order";
import { loadReviews } from "@/lib/data/order/review-store";
import { execute } from "@/lib/operations/execute";
import { passGate } from "@/lib/operations/gate/pass";
import { changeOrder } from "@/lib/operations/order/change";
import { acknowledgeChange } from "@/lib/operations/order/change-acknowledge";
import { raiseDifference } from "@/lib/operations/order/difference-raise";
import { settleDifference } from "@/lib/operations/order/difference-settle";
import { givePromise } from "@/lib/operations/promise/give";
import { acceptWindow } from "@/lib/operations/run/accept-window";
import { evaluateRun } from "@/lib/operations/run/evaluate";
import { submitRun } from "@/lib/operations/run/submit";
import { typeReadings } from "@/lib/operations/run/type-readings";
import { collectSensor } from "@/lib/operations/sensor/collect";
import { orderFormView } from "@/lib/views/order/order-form";
import { orderPromiseView } from "@/lib/views/promise/order-promise";
import { orderCommerceView } from "@/lib/views/quotation/order-commerce";
import { auditSentences, refusalOf } from "../../support/front-desk";
import { createFullRun, uploadSeed } from "../../support/full-run";
import { accepted, lineInput, orderInput, received, recorded } from "../../support/orders";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

const reviewed = {
  requirementsUnderstood: "on",
  capabilityAndResources: "on",
  externalProviders: "none",
  methodSuitable: "on",
} as const;

type Form = Awaited<ReturnType<typeof orderFormView>>;
const formOf = (number: string): Promise<Form> => orderFormView(bench.frontDesk, number, benchClock());
const change = async (number: string, mend: (form: Form) => object, more: object = {}) => {
  const form = await formOf(number);
  const input = { ...form, reason: "the furnace is used hotter", agreedWith: "Nora North", ...reviewed };
  const changed = { ...input, ...mend(form), ...more };
  return execute(changeOrder, bench.frontDesk, changed as never, benchClock);
};
const stored = (number: string) => inLaboratory(async (tx) => (await loadOrder(tx, number)) ?? expect.fail());
const input = (more = {}) => orderInput(bench.northern.customerId, more);
const nobody = { decisionRuleAgreedBy: "", decisionRuleAgreedOn: "", guardBandRatio: "" };
const plainLine = { ...lineInput, tolerance: "none" as const, setpoints: "600" };
const withSetpoints = (setpoints: string) => (form: Form) => ({
  lines: form.lines.map((line) => ({ ...line, setpoints })),
});

describe("changing an accepted order", () => {
  it("keeps its sensors, and before, after, reason, who agreed and another review", async () => {
    const number = await accepted(bench, input({ lines: [lineInput, { ...lineInput, quantity: "1" }] }));
    const [tag] = await received(bench, number, "A1");
    await change(number, (form) => ({
      lines: [
        { ...form.lines[0], setpoints: "300 500 700 900 1050", groupName: "zone 3" },
        { ...form.lines[0], lineId: "", quantity: "2", setpoints: "600" },
      ],
      toldCustomer: "on",
    }));
    const order = await stored(number);
    expect(order).toMatchObject({ state: "accepted", version: 3 });
    expect(order.lines.map(({ setpoints, sensors }) => [setpoints.length, sensors.length])).toEqual([
      [5, 1],
      [1, 0],
    ]);
    expect(order.lines[0]?.sensors[0]?.tag).toBe(tag);
    const [row] = await inLaboratory((tx) => tx.orderChange.findMany({ where: { orderId: order.id } }));
    expect(row).toMatchObject({
      sequence: 1,
      reason: "the furnace is used hotter",
      agreedWith: "Nora North",
    });
    expect(row?.before).toContain("300 500 700 900 1000 °C");
    expect(row?.after).toContain("300 500 700 900 1050 °C");
    const reviews = await inLaboratory((tx) =>
      tx.orderReview.findMany({ where: { orderId: order.id }, orderBy: { sequence: "asc" } }),
    );
    expect(reviews.map(({ occasion, orderVersion }) => [occasion, orderVersion])).toEqual([
      ["acceptance", 1],
      ["change", 3],
    ]);
    expect((await auditSentences()).at(-1)).toBe(
      `order.changed: changed the accepted order ${number} in 4 places, after review`,
    );
  });

  it("is refused before acceptance, without a difference, and after somebody else's", async () => {
    const open = await recorded(bench, input());
    expect(await refusalOf(change(open, withSetpoints("300")))).toMatchObject({ code: "wrong-state" });
    const number = await accepted(bench, input());
    expect((await refusalOf(change(number, () => ({})))).message).toContain("Nothing differs");
    await change(number, withSetpoints("300 500"));
    expect(await refusalOf(change(number, withSetpoints("300"), { version: 2 }))).toMatchObject({
      code: "changed-meanwhile",
    });
    expect(
      await refusalOf(change(number, withSetpoints("300"), { reason: "", methodSuitable: "" })),
    ).toMatchObject({
      fields: { reason: expect.any(String), methodSuitable: expect.any(String) },
    });
  });

  it("holds the review of an acceptance: what is missing, what the customer has to hear, a difference open", async () => {
    const number = await accepted(bench, input({ decisionRule: "none", ...nobody, lines: [plainLine] }));
    const guarded = { ...nobody, decisionRule: "guarded", guardBandRatio: "1" };
    const withClass = (setpoints: string) => (form: Form) => ({
      lines: form.lines.map((line) => ({ ...line, setpoints, tolerance: "1" })),
    });
    const gaps = await refusalOf(change(number, withClass(""), guarded));
    expect(gaps.message).toMatch(/not complete.*write who agreed.*write the day.*no setpoints yet/);
    expect(gaps.fields).toEqual({
      decisionRuleAgreedBy: expect.stringContaining("write who agreed"),
      decisionRuleAgreedOn: expect.stringContaining("write the day"),
      "lines.0.setpoints": expect.stringContaining("no setpoints yet"),
    });
    const far = (more = {}) => change(number, withSetpoints("300 1160"), more);
    expect(await refusalOf(far())).toMatchObject({
      message: expect.stringContaining("1160 °C cannot be done as things stand"),
      fields: { toldCustomer: expect.any(String) },
    });
    const beyond = change(number, withSetpoints("300 1300"), { toldCustomer: "on" });
    expect(await refusalOf(beyond)).toMatchObject({
      message: expect.stringContaining("1300 °C cannot be reached here"),
      fields: { "lines.0.setpoints": expect.any(String) },
    });
    const raised = { number, text: "1160 °C asked" };
    const { differenceId } = await execute(raiseDifference, bench.frontDesk, raised, benchClock);
    expect((await formOf(number)).openDifferences).toBe(1);
    const told = () => far({ toldCustomer: "on" });
    expect((await refusalOf(told())).message).toContain("“1160 °C asked”");
    expect(await stored(number)).toMatchObject({ version: 2, lines: [{ setpoints: [{ celsius: 600 }] }] });
    const settled = {
      number,
      differenceId,
      text: "1160 °C once a standard is back",
      agreedWith: "Nora North",
    };
    await execute(settleDifference, bench.frontDesk, settled, benchClock);
    await told();
    const order = await stored(number);
    const reviews = await inLaboratory((tx) => loadReviews(tx, order.id));
    expect(reviews.at(-1)?.answers.toldCustomer).toEqual([expect.stringContaining("1160 °C cannot be")]);
  });

  it("completes an order of which nothing more is to come", async () => {
    const number = await accepted(bench, input());
    const [tag = "", other = ""] = await received(bench, number, "S1\nS2");
    for (const one of [tag, other])
      await execute(
        collectSensor,
        bench.frontDesk,
        { tag: one, handedOver: "in-person", reason: "broken on the way" } as never,
        benchClock,
      );
    const { shown, proposal } = await orderPromiseView(bench.frontDesk, number, null, benchClock());
    const promisedOn = proposal.kind === "proposed" ? proposal.promisedOn : "";
    await execute(givePromise, bench.frontDesk, { number, promisedOn, shown }, benchClock);
    const { id: orderId, state } = await stored(number);
    const hours = () => inLaboratory((tx) => tx.furnaceSlot.count({ where: { orderId, isReleased: false } }));
    expect([state, await hours()]).toEqual(["accepted", 1]);
    const fewer = (form: Form) => ({ lines: form.lines.map((line) => ({ ...line, quantity: "2" })) });
    await change(number, fewer);
    expect([(await stored(number)).state, await hours()]).toEqual(["completed", 0]);
    expect((await auditSentences()).at(-1)).toBe(
      `order.completed: completed order ${number}: 2 sensors finished`,
    );
  });

  it("says of a promise that it was reckoned for other work, until a day is promised anew", async () => {
    const number = await accepted(bench, input());
    const early = {
      promisedOn: new Date("2026-11-30"),
      promiseBasis: '{"reckonedAt":"2026-10-01T08:00:00Z"}',
    };
    await inLaboratory((tx) =>
      tx.order.update({ where: { number }, data: { ...early, version: { increment: 1 } } }),
    );
    const isOfBefore = async () => (await orderCommerceView(bench.frontDesk, number)).hasPromiseOfBefore;
    await change(number, () => ({ note: "call at the gate" }));
    expect(await isOfBefore()).toBe(false);
    await change(number, withSetpoints("300 500"));
    expect(await isOfBefore()).toBe(true);
    const promiseBasis = JSON.stringify({ reckonedAt: benchClock().toISOString() });
    await inLaboratory((tx) =>
      tx.order.update({ where: { number }, data: { promiseBasis, version: { increment: 1 } } }),
    );
    expect(await isOfBefore()).toBe(false);
  });

  it("leaves what came as it came: type, how many, and the line itself", async () => {
    const number = await accepted(bench, input({ lines: [lineInput, lineInput] }));
    await received(bench, number, "B1\nB2", 2);
    const refusal = await refusalOf(
      change(number, (form) => ({
        lines: form.lines.map((line) => ({ ...line, typeLetter: "N", quantity: "1" })),
      })),
    );
    expect(Object.keys(refusal.fields ?? {}).sort()).toEqual(["lines.1.quantity", "lines.1.typeLetter"]);
    const lost = await refusalOf(change(number, (form) => ({ lines: form.lines.slice(0, 1) })));
    expect(lost.fields?.lines).toContain("Line 2 has sensors here");
    await change(number, (form) => ({ lines: form.lines.slice(1) }));
    expect((await stored(number)).lines.map(({ position, quantity }) => [position, quantity])).toEqual([
      [1, 3],
    ]);
  });

  it("is for whoever accepts orders", async () => {
    const number = await accepted(bench, input());
    const form = { ...(await formOf(number)), reason: "because", agreedWith: "N", ...reviewed };
    expect(await refusalOf(execute(changeOrder, bench.technician, form as never, benchClock))).toMatchObject({
      code: "not-permitted",
    });
  });
});

describe("a run whose load has a sensor of a changed order", () => {
  it("stands still until a technician has acknowledged the change, and then goes on", async () => {
    const run = await createFullRun(bench);
    const orders = await inLaboratory((tx) =>
      tx.order.findMany({
        where: { lines: { some: { sensors: { some: { state: "loaded" } } } } },
        select: { number: true, customerId: true },
      }),
    );
    const { number } = orders.find(({ customerId }) => customerId === bench.northern.customerId)!;
    await change(number, withSetpoints("300 500 700 900 1100 1150"), { toldCustomer: "on" });
    expect((await auditSentences()).at(-1)).toContain(`${run} stands still until it is acknowledged`);
    const stands = expect.stringContaining(`Run ${run} stands still: order ${number} was changed`);
    const entry = [{ seconds: 0, channel: "101", microvolts: 1, polarity: 1 as const }];
    const typed = { run, startedAt: "2026-10-15T06:00:00Z", first: entry, second: entry };
    const row = await inLaboratory((tx) => tx.run.findUniqueOrThrow({ where: { number: run } }));
    const works = [
      () => execute(passGate, bench.technician, { run }, benchClock),
      () => uploadSeed(bench, run, 1),
      () => execute(typeReadings, bench.technician, typed, benchClock),
      () =>
        execute(
          acceptWindow,
          bench.technician,
          { run, setpoint: 1, fromSeconds: 0, toSeconds: 600, reason: "" } as never,
          benchClock,
        ),
      () => execute(evaluateRun, bench.technician, { run }, benchClock),
      () =>
        execute(
          submitRun,
          bench.technician,
          { run, version: row.version, tipCheckReason: "" } as never,
          benchClock,
        ),
    ];
    for (const work of works) expect(await refusalOf(work())).toMatchObject({ message: stands });
    const [open] = await inLaboratory((tx) => loadOpenChanges(tx, row));
    const acknowledge = { run, changeId: open?.changeId ?? "" };
    expect((await refusalOf(execute(acknowledgeChange, bench.frontDesk, acknowledge, benchClock))).code).toBe(
      "not-permitted",
    );
    await execute(acknowledgeChange, bench.technician, acknowledge, benchClock);
    expect((await auditSentences()).at(-1)).toContain(
      `acknowledged change 1 of order ${number} for run ${run}`,
    );
    expect(
      (await refusalOf(execute(acknowledgeChange, bench.technician, acknowledge, benchClock))).code,
    ).toBe("changed-meanwhile");
    expect(await uploadSeed(bench, run, 1)).toMatchObject({ block: 1 });
    const raised = { number, text: "1150 °C asked again" };
    await execute(raiseDifference, bench.frontDesk, raised, benchClock);
    expect((await refusalOf(execute(passGate, bench.technician, { run }, benchClock))).message).toContain(
      `Settle it under “Differences” of order ${number}, then start run ${run}.`,
    );
  });

  it("is not disturbed by another order, accepted or changed meanwhile", async () => {
    const other = await accepted(bench, input());
    await change(other, withSetpoints("300"));
    const run = await inLaboratory((tx) => tx.run.findFirstOrThrow({ orderBy: { number: "asc" } }));
    expect(await inLaboratory((tx) => loadOpenChanges(tx, run))).toEqual([]);
  });
});
