import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inScope, type Tx } from "@/lib/data/in-scope";
import { orderPage, orderPageSql } from "@/lib/data/sql/order-page";
import { searchEverywhereSql } from "@/lib/data/sql/search-everywhere";
import { sensorPage } from "@/lib/data/sql/sensor-page";
import type { Turn } from "@/lib/domain/list/page";
import type { OrderQuery } from "@/lib/domain/order/list-query";
import type { SensorQuery } from "@/lib/domain/sensor/list-query";
import { boardView } from "@/lib/views/board";
import { customersView } from "@/lib/views/customers";
import { ordersView } from "@/lib/views/order/orders";
import { runsView } from "@/lib/views/run/runs";
import { searchView } from "@/lib/views/search";
import { sensorsView } from "@/lib/views/sensor/sensors";
import { todayView } from "@/lib/views/today";
import { clock, type FrontDesk, openFrontDesk, refusalOf } from "../support/front-desk";
import { insertOrders } from "../support/many-orders";
import { offered, recordedPrices } from "../support/offers";
import { orderInput, recorded } from "../support/orders";

const today = "2026-03-04";
let desk: FrontDesk;

beforeAll(async () => {
  desk = await openFrontDesk();
  await insertOrders(desk, { from: 1, to: 120, customerId: desk.northern.customerId });
  await insertOrders(desk, { from: 121, to: 130, customerId: desk.southern.customerId });
});
afterAll(() => desk.close());

const page = (query: OrderQuery) => ordersView(desk.frontDesk, query, clock());
const numbers = (list: Awaited<ReturnType<typeof page>>) => list.orders.map(({ number }) => number);

/** From the first page to the last, by the links of each. */
const walk = async (query: OrderQuery, between: () => Promise<void> = async () => {}) => {
  const seen: string[] = [];
  let list = await page(query);
  for (;;) {
    seen.push(...numbers(list));
    if (list.next === null) return { seen, last: list };
    await between();
    list = await page({ ...query, after: list.next });
  }
};

describe("a list", () => {
  it("shows each row once, though ten are of the same minute and more are added meanwhile", async () => {
    let added = 200;
    const { seen, last } = await walk({}, async () => {
      added += 1;
      await insertOrders(desk, { from: added, to: added, customerId: desk.southern.customerId });
    });
    expect(new Set(seen).size).toBe(seen.length);
    expect(seen).toHaveLength(130);
    // And back again, from the last page to the first: what was added stands before all of it.
    const back: string[] = [...numbers(last)];
    let list = last;
    while (list.previous !== null) {
      list = await page({ before: list.previous });
      back.unshift(...numbers(list));
    }
    expect(back.slice(-130)).toEqual(seen);
    expect(back).toHaveLength(132);
  });

  it("is narrowed by customer, words, days, and what they have in common", async () => {
    const southern = await page({ customer: desk.southern.customerId });
    expect(southern.customer).toBe("Southern Glass");
    expect(southern.orders.every(({ customer }) => customer === "Southern Glass")).toBe(true);
    expect(numbers(await page({ show: "all", q: "buy7007" }))).toEqual(["O-2025-0007"]);
    expect(numbers(await page({ show: "all", q: "o-2025-0012" }))).toEqual(["O-2025-0012"]);
    expect(numbers(await page({ show: "all", q: "southern", to: "2024-12-31" }))).toEqual([]);
    expect(numbers(await page({ show: "completed" }))).toEqual([]);
    expect(numbers(await page({ urgency: "express" }))).toEqual([]);
    expect((await page({})).count).toBeGreaterThanOrEqual(130);
  });

  it("by words is the same whether they are gathered first or the list is read in its own order", async () => {
    const both = <T>(start: string, ask: (tx: Tx, turn: Turn, most?: number) => Promise<T>) =>
      inScope({ kind: "laboratory" }, async (tx) => {
        const turns: readonly Turn[] = [
          { kind: "first" },
          { kind: "after", anchor: `${start}0100` },
          { kind: "before", anchor: `${start}0020` },
        ];
        const pages: T[] = [];
        for (const turn of turns) {
          const [gathered, read] = [await ask(tx, turn), await ask(tx, turn, 0)];
          expect(read).toEqual(gathered);
          pages.push(gathered);
        }
        return pages;
      });
    const orders = async (query: OrderQuery) =>
      both("O-2025-", (tx, turn, most) => orderPage(tx, { query, today, atRisk: [] }, turn, most));
    const [buys] = await orders({ show: "all", q: "buy 70" });
    expect([buys?.rows.length, buys?.count]).toEqual([51, 99]);
    expect((await orders({ q: "northern", urgency: "standard" }))[0]?.count).toBeGreaterThanOrEqual(120);
    for (const q of ["o-2025-01", "7007", "no such", "%"]) await orders({ show: "all", q });
    const sensors = async (find: string, more: SensorQuery = {}) =>
      both("T-9", (tx, turn, most) => sensorPage(tx, { query: { ...more, find }, today }, turn, most));
    const [sixties] = await sensors("x 006", { show: "all" });
    expect(sixties?.rows.map(({ name }) => name)).toEqual(
      Array.from({ length: 10 }, (_, at) => `T-900${69 - at}`),
    );
    for (const find of ["q", "/Q", "mx", "T-9001", "no such"]) await sensors(find);
    await sensors("0044", { show: "all", customer: desk.southern.customerId });
  });

  it("counts its states only where nothing narrows it: with a word or a filter they would count what is not shown", async () => {
    const counted = async (query: OrderQuery & SensorQuery) => {
      const sensors = await sensorsView(desk.technician, query, today);
      return [...(await page(query)).filters, ...sensors.filters].map(({ count }) => count);
    };
    const { next } = await page({});
    for (const query of [{}, { show: "all" }, { after: next ?? "" }] as const)
      expect((await counted(query)).every((count) => typeof count === "number")).toBe(true);
    for (const query of [
      { q: "zzz", find: "zzz" },
      { only: "late" },
      { customer: desk.southern.customerId },
    ] as const)
      expect((await counted(query)).every((count) => count === null)).toBe(true);
  });

  it("with an anchor that is none is empty, and with a wildcard finds nothing", async () => {
    expect(numbers(await page({ after: "O-2025-9999" }))).toEqual([]);
    expect(numbers(await page({ show: "all", q: "%" }))).toEqual([]);
    expect(numbers(await page({ show: "all", q: "--" }))).toEqual([]);
  });

  it("pages sensors and customers too", async () => {
    const first = await sensorsView(desk.technician, {}, today);
    expect(first.sensors).toHaveLength(50);
    const second = await sensorsView(desk.technician, { after: first.next ?? "" }, today);
    expect(second.previous).toBe(second.sensors[0]?.tag);
    expect(first.sensors.at(-1)!.tag > second.sensors[0]!.tag).toBe(true);
    const names = (await customersView(desk.frontDesk, {})).rows.map(({ name }) => name);
    expect(names).toEqual(["Northern Heat Treatment", "Southern Glass"]);
    expect((await customersView(desk.frontDesk, { find: "GLASS" })).rows).toHaveLength(1);
    expect(await runsView(desk.technician, {})).toMatchObject({ runs: [], isAny: false });
  });

  it("late and at risk are of accepted orders with a day, both sides of it", async () => {
    await inScope({ kind: "laboratory" }, async (tx) => {
      await tx.order.update({
        where: { number: "O-2025-0001" },
        data: { promisedOn: new Date("2026-03-03") },
      });
      await tx.order.update({
        where: { number: "O-2025-0002" },
        data: { promisedOn: new Date("2026-03-04") },
      });
      await tx.order.update({
        where: { number: "O-2025-0003" },
        data: { promisedOn: new Date("2026-03-30") },
      });
    });
    expect(numbers(await page({ only: "late" }))).toEqual(["O-2025-0001"]);
    expect(numbers(await page({ only: "risk" }))).toEqual(["O-2025-0002"]);
    expect(
      (await sensorsView(desk.technician, { only: "late" }, today)).sensors.map(({ tag }) => tag),
    ).toEqual(["T-90001"]);
    const board = await boardView(desk.frontDesk, clock());
    const count = (key: string) => board.numbers.find((one) => one.key === key)?.count;
    expect([count("late"), count("risk"), count("promised")]).toEqual([1, 1, 2]);
    expect(board.doubtful.map(({ number, outlook }) => [number, outlook.kind])).toEqual([
      ["O-2025-0001", "late"],
      ["O-2025-0002", "risk"],
    ]);
    const late = (await todayView(desk.frontDesk, today)).find(({ key }) => key === "late");
    expect(late).toMatchObject({ count: 1, href: "/orders?only=late" });
  });
});

describe("search", () => {
  const labels = async (text: string) =>
    (await searchView(desk.frontDesk, text)).map(({ kind, hits }) => [kind, hits[0]?.key]);

  it("finds by any part of a serial, tag, order, purchase order, customer and furnace", async () => {
    expect(await labels("mx 0044q")).toEqual([["sensor", "T-90044"]]);
    expect(await labels("0045/Q")).toEqual([["sensor", "T-90045"]]);
    expect(await labels("x 0043")).toEqual([["sensor", "T-90043"]]);
    const { sensors } = await sensorsView(desk.technician, { find: "X-0043" }, today);
    expect(sensors.map(({ tag }) => tag)).toEqual(["T-90043"]);
    expect(await labels("t-90046")).toEqual([["sensor", "T-90046"]]);
    expect(await labels("O-2025-0047")).toEqual([["order", "O-2025-0047"]]);
    expect(await labels("BUY 7048")).toEqual([["order", "O-2025-0048"]]);
    expect(await labels("glass")).toEqual([["customer", desk.southern.customerId]]);
    expect((await labels("f-1"))[0]?.[0]).toBe("equipment");
    expect(await labels("nothing of this name")).toEqual([]);
    expect(await searchView(desk.frontDesk, "")).toEqual([]);
  });

  it("says of a quotation whose order it is of, and not that order's state", async () => {
    await recordedPrices(desk);
    const number = await recorded(desk, orderInput(desk.northern.customerId));
    const offer = await offered(desk, number);
    const [group] = await searchView(desk.frontDesk, offer.number);
    expect(group).toMatchObject({ kind: "paper", hits: [{ key: number, label: offer.number, state: "" }] });
  });

  it("puts what it is before what begins so", async () => {
    const [group] = await searchView(desk.frontDesk, "T-9004");
    expect(group?.hits.every(({ isExact }) => !isExact)).toBe(true);
    expect(group?.all).toBe("/sensors?show=all&find=T-9004");
    const [exact] = await searchView(desk.frontDesk, "MX-0050/Q");
    expect(exact?.hits[0]).toMatchObject({ key: "T-90050", isExact: true });
  });

  it("is not for customers, whose own scope would show no other's rows either", async () => {
    const customer = desk.northern.actor;
    for (const question of [
      () => searchView(customer, "MX"),
      () => boardView(customer, clock()),
      () => todayView(customer, today),
      () => ordersView(customer, {}, clock()),
      () => customersView(customer, {}),
    ])
      expect(await refusalOf(question())).toMatchObject({ code: "not-permitted" });
    const scope = { kind: "customer", customerId: desk.southern.customerId } as const;
    const [own, hits, parts] = await inScope(scope, async (tx) => [
      await tx.$queryRaw<{ name: string }[]>(
        orderPageSql({ query: { show: "all" }, today, atRisk: [] }, { kind: "first" }),
      ),
      await tx.$queryRaw<{ key: string }[]>(searchEverywhereSql("MX-0044")),
      // Looks as the owner, who sees all: so it asks itself whose scope it is.
      await tx.$queryRaw<{ id: string }[]>`SELECT sensors_with_serial_part('x0044', 9)::text AS id`,
    ]);
    expect(own.length).toBeGreaterThan(0);
    expect(own.every(({ name }) => name > "O-2025-0120")).toBe(true);
    expect([hits, parts]).toEqual([[], []]);
  });
});

it("says of more sensors or orders than it counts that there are more", async () => {
  await insertOrders(desk, { from: 3001, to: 3501, customerId: desk.southern.customerId });
  const { count, next, sensors } = await sensorsView(desk.technician, { show: "all", find: "mx-3" }, today);
  expect([count, sensors.length, sensors[0]?.tag]).toEqual([501, 50, "T-93501"]);
  expect(next).toBe("T-93452");
  const orders = await page({ show: "all", q: "southern" });
  expect([orders.count, numbers(orders)[0]]).toEqual([501, "O-2025-3501"]);
  expect((await page({ q: "southern", urgency: "express" })).count).toBe(0);
});
