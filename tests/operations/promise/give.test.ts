import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { loadTaken } from "@/lib/data/promise/plan-store";
import { defaultPromisePolicy } from "@/lib/domain/promise/policy";
import type { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { cancelOrder } from "@/lib/operations/order/cancel";
import { givePromise } from "@/lib/operations/promise/give";
import { createRun } from "@/lib/operations/run/create";
import { boardView } from "@/lib/views/board";
import { ordersView } from "@/lib/views/order/orders";
import { furnaceQueueView } from "@/lib/views/promise/furnace-queue";
import { orderPromiseView } from "@/lib/views/promise/order-promise";
import { todayView } from "@/lib/views/today";
import { auditSentences, refusalOf } from "../../support/front-desk";
import { fullRunInput } from "../../support/full-run";
import { accepted, lineInput, orderInput, recorded } from "../../support/orders";
import { benchClock as clock, openRunBench, type RunBench } from "../../support/run-bench";

let desk: RunBench;
beforeAll(async () => {
  desk = await openRunBench();
});
afterAll(() => desk.close());

const laboratory = { kind: "laboratory" } as const;
const order = () =>
  accepted(desk, orderInput(desk.northern.customerId, { lines: [{ ...lineInput, setpoints: "300 500" }] }));
const page = (number: string) => orderPromiseView(desk.frontDesk, number, null, clock());
const give = async (number: string, more: object = {}, actor: Actor = desk.frontDesk) => {
  const { shown, proposal } = await page(number);
  const promisedOn = proposal.kind === "proposed" ? proposal.promisedOn : "2026-11-30";
  return execute(givePromise, actor, { number, promisedOn, shown, ...more }, clock);
};
const slots = () =>
  inScope(laboratory, (tx) =>
    tx.furnaceSlot.findMany({ where: { isReleased: false }, orderBy: { startsAt: "asc" } }),
  );

describe("a promised day", () => {
  it("is the one the furnaces allow, takes their hours and keeps what it stands on", async () => {
    const number = await order();
    expect((await refusalOf(give(number, {}, desk.technician))).code).toBe("not-permitted");
    expect((await furnaceQueueView(desk.technician, clock())).waiting).toMatchObject([
      { number, sensors: 3 },
    ]);
    const { promisedOn } = await give(number);
    const row = await inScope(laboratory, (tx) => tx.order.findUniqueOrThrow({ where: { number } }));
    expect(row.promisedOn?.toISOString().slice(0, 10)).toBe(promisedOn);
    expect(JSON.parse(row.promiseBasis)).toMatchObject({
      proposedOn: promisedOn,
      slots: [{ sensors: 3 }],
    });
    expect(await slots()).toHaveLength(1);
    const queue = await furnaceQueueView(desk.technician, clock());
    expect(queue.furnaces.flatMap((furnace) => furnace.slots)).toMatchObject([
      { order: number, customer: "Northern Heat Treatment" },
    ]);
    expect(queue.waiting).toEqual([]);
    expect((await auditSentences()).at(-1)).toContain(
      `promised order ${number} for ${promisedOn}; 1 furnace load`,
    );
  });

  it("is shown with the setpoints as the customer wrote them in °F", async () => {
    const lines = [{ ...lineInput, temperatureUnit: "F" as const, setpoints: "600" }];
    const number = await recorded(desk, orderInput(desk.northern.customerId, { lines }));
    const { fahrenheit, proposal } = await page(number);
    const point = proposal.kind === "proposed" ? proposal.slots[0]?.setpointsCelsius[0] : undefined;
    expect(point).toBeCloseTo(315.56, 2);
    expect(fahrenheit[point ?? 0]).toBe("600 °F");
  });

  it("may be another one, with a reason; never one that is past", async () => {
    const [first] = (await furnaceQueueView(desk.technician, clock())).furnaces.flatMap((one) => one.slots);
    const number = await order();
    // Behind the one whose hours are in front, promised though it is.
    expect((await page(number)).proposal).toMatchObject({ ahead: [first?.order] });
    expect((await refusalOf(give(number, { promisedOn: "2026-12-01" }))).fields).toHaveProperty("reason");
    expect((await refusalOf(give(number, { promisedOn: "2026-10-14", reason: "x" }))).fields).toHaveProperty(
      "promisedOn",
    );
    await give(number, { promisedOn: "2026-12-01", reason: "They need them in winter" });
    expect((await auditSentences()).at(-1)).toContain("because: They need them in winter");
  });

  it("gives the hours that were proposed to one of fifty who take them at once, and tells the others the new day", async () => {
    // Recorded and not yet accepted, none waits before another: each is shown the same hours.
    const numbers: string[] = [];
    for (let at = 0; at < 50; at += 1)
      numbers.push(await recorded(desk, orderInput(desk.northern.customerId)));
    const pages = await Promise.all(numbers.map(page));
    expect(new Set(pages.map(({ shown }) => shown)).size).toBe(1);
    const before = (await slots()).length;
    const { shown, proposal } = pages[0]!;
    const promisedOn = proposal.kind === "proposed" ? proposal.promisedOn : "";
    const all = await Promise.allSettled(
      numbers.map((number) => execute(givePromise, desk.frontDesk, { number, promisedOn, shown }, clock)),
    );
    expect(all.filter(({ status }) => status === "fulfilled")).toHaveLength(1);
    expect((await slots()).length - before).toBe(proposal.kind === "proposed" ? proposal.slots.length : 0);
    const lost = all.flatMap((one) => (one.status === "rejected" ? [one.reason as Refused] : []));
    for (const { refusal } of lost) expect(refusal).toMatchObject({ code: "changed-meanwhile" });
    expect(lost[0]?.refusal.message).toMatch(/now they allow \d{4}-/);
  });

  it("is refused by the database itself where hours overlap: of fifty who write them at once one wins", async () => {
    const furnaceId = (await inScope(laboratory, (tx) => tx.furnace.findFirstOrThrow())).id;
    const takenById = desk.frontDesk.kind === "staff" ? desk.frontDesk.personId : "";
    const hours = { startsAt: new Date("2027-03-01T08:00:00Z"), endsAt: new Date("2027-03-01T12:00:00Z") };
    const write = () =>
      inScope(laboratory, (tx) =>
        tx.furnaceSlot.create({ data: { furnaceId, takenById, takenAt: clock(), ...hours } }),
      );
    const all = await Promise.allSettled(Array.from({ length: 50 }, write));
    expect(all.filter(({ status }) => status === "fulfilled")).toHaveLength(1);
  });

  it("is told anew where the plan changed since it was shown, and gives its own hours back when promised again", async () => {
    const [one, two] = [
      await recorded(desk, orderInput(desk.northern.customerId)),
      await recorded(desk, orderInput(desk.northern.customerId)),
    ];
    const stale = await page(one);
    await give(two);
    expect((await refusalOf(give(one, { shown: stale.shown }))).code).toBe("changed-meanwhile");
    await give(one);
    const { id } = await inScope(laboratory, (tx) => tx.order.findUniqueOrThrow({ where: { number: one } }));
    const mine = async () =>
      (await slots()).filter(({ orderId }) => orderId === id).map(({ startsAt }) => startsAt);
    const once = await mine();
    expect(once.length).toBeGreaterThan(0);
    await give(one);
    expect(await mine()).toEqual(once);
  });

  it("lets go of the hours of an order that was cancelled", async () => {
    const gone = await order();
    await give(gone);
    const { id } = await inScope(laboratory, (tx) => tx.order.findUniqueOrThrow({ where: { number: gone } }));
    await execute(cancelOrder, desk.frontDesk, { number: gone, reason: "Not wanted any more" }, clock);
    expect((await slots()).some(({ orderId }) => orderId === id)).toBe(false);
  });

  it("reckons with runs and characterisations as with what is reserved, and never counts a sensor twice", async () => {
    const input = await fullRunInput(desk);
    const loaded = await inScope(laboratory, (tx) =>
      tx.order.findMany({
        where: { lines: { some: { sensors: { some: { state: "received" } } } } },
        orderBy: { number: "asc" },
        select: { id: true, number: true },
      }),
    );
    const [first, second] = loaded.map(({ number }) => number);
    await give(first!);
    const bars = async () =>
      (await furnaceQueueView(desk.technician, clock())).furnaces.flatMap((one) => one.slots);
    expect((await bars()).some(({ order: of }) => of === first)).toBe(true);
    const { number: run } = await execute(createRun, desk.technician, input, clock);
    const now = await bars();
    expect(now.filter(({ order: of }) => of === first)).toEqual([]);
    expect(now.map(({ note }) => note)).toContain(`Run ${run}, planned, for ${first}, ${second}`);
    // Nothing of it is left to plan, and it is ready no sooner than its run.
    const running = now.find(({ note }) => note.includes(run))!;
    const { proposal } = await page(second!);
    expect(proposal).toMatchObject({ kind: "proposed", slots: [] });
    expect(proposal.kind === "proposed" && proposal.promisedOn > running.endsAt.slice(0, 10)).toBe(true);
    const next = await order();
    const taken = await inScope(laboratory, (tx) => loadTaken(tx, clock(), defaultPromisePolicy, next));
    expect(taken.find(({ of }) => of === run)?.orders).toEqual([first, second]);
    await give(next);
    expect((await slots()).some(({ orderId }) => orderId === loaded[0]?.id)).toBe(false);

    const hot = async () =>
      (await boardView(desk.technician, clock())).numbers.find(({ key }) => key === "hot")?.count;
    expect(await hot()).toBe(0);
    const plan = JSON.stringify({
      ...{ temperatures: [300, 700], fromMillimetre: 300, toMillimetre: 400, windowMinutes: 20 },
      ...{ probe: "REF-02", probeType: "S", monitor: "REF-01", monitorType: "S" },
      ...{ probeInhomogeneityPercent: 0.02, meterMicrovolt: 1 },
    });
    const { configurationId } = desk;
    await inScope(laboratory, (tx) =>
      tx.characterisationRun.create({
        data: { number: "CH-2026-0900", configurationId, plan, state: "measuring", createdAt: clock() },
      }),
    );
    expect(await hot()).toBe(1);
    const [furnace] = (await boardView(desk.technician, clock())).furnaces.filter((one) => one.hot);
    expect(furnace).toMatchObject({
      hot: { number: "CH-2026-0900", what: "characterisation, up to 700 °C" },
      queue: [{ number: run, what: "6 sensors, up to 1100 °C" }],
    });
    const hotBar = furnace?.bars.find(({ label }) => label === "CH-2026-0900");
    expect(hotBar).toMatchObject({ kind: "hot" });
    expect(Date.parse(hotBar!.startsAt)).toBeLessThanOrEqual(clock().getTime());
    expect(furnace?.bars.map(({ label }) => label)).toEqual(
      expect.arrayContaining(["CH-2026-0900", run, next]),
    );
    expect((await todayView(desk.technician, "2026-10-15")).find(({ key }) => key === "hot")?.count).toBe(1);

    // What is hot runs into hours that are kept for another order: that order is at risk, and says by what.
    const soon = new Date(clock().getTime() + 3_600_000);
    const { id: nextId } = await inScope(laboratory, (tx) =>
      tx.order.findUniqueOrThrow({ where: { number: next } }),
    );
    await inScope(laboratory, async (tx) => {
      await tx.order.update({ where: { id: nextId }, data: { promisedOn: new Date("2026-10-21") } });
      await tx.furnaceSlot.updateMany({
        where: { orderId: nextId, isReleased: false },
        data: { startsAt: clock(), endsAt: soon },
      });
    });
    const doubtful = (await boardView(desk.technician, clock())).doubtful.find(
      ({ number }) => number === next,
    );
    expect(doubtful?.outlook).toEqual({
      kind: "risk",
      reasons: ["CH-2026-0900 in the furnace during the hours kept for it"],
    });
    const atRisk = await ordersView(desk.frontDesk, { only: "risk" }, clock());
    expect(atRisk.orders.map(({ number }) => number)).toContain(next);
  });
});
