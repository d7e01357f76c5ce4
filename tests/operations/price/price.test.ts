import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { inScope } from "@/lib/data/in-scope";
import { execute } from "@/lib/operations/execute";
import { endPriceOfList } from "@/lib/operations/price/end";
import { recordPrice } from "@/lib/operations/price/record";
import { setCurrency } from "@/lib/operations/price/set-currency";
import { priceListView } from "@/lib/views/price/price-list";
import {
  auditSentences,
  clock,
  type FrontDesk,
  openFrontDesk,
  recordLaboratory,
  refusalOf,
} from "../../support/front-desk";

let desk: FrontDesk;
beforeAll(async () => {
  desk = await openFrontDesk();
  await recordLaboratory(desk);
});
afterAll(() => desk.close());

const price = {
  key: "calibration",
  title: "Calibration point",
  per: "point",
  typeLetter: "",
  amount: "42.50",
  validFrom: "2026-03-04",
} as const;
const record = (more: object = {}, actor = desk.frontDesk) =>
  execute(recordPrice, actor, { ...price, ...more }, clock);
const rows = () =>
  inScope({ kind: "laboratory" }, (tx) => tx.priceItem.findMany({ orderBy: { validFrom: "asc" } }));

const set = (currency: string, actor = desk.frontDesk) => execute(setCurrency, actor, { currency }, clock);

describe("the currency", () => {
  it("is set by whoever records prices, as ISO 4217 knows it, while there is none", async () => {
    expect((await refusalOf(set("EUR", desk.technician))).code).toBe("not-permitted");
    expect((await refusalOf(set("XQQ"))).fields).toEqual({
      currency: "Three letters, such as EUR (ISO 4217).",
    });
    expect((await refusalOf(set("GBP"))).message).toContain("in GBP already");
    await set("jpy");
    expect((await auditSentences()).at(-1)).toBe(
      "price.currency-set: set the currency of prices from GBP to JPY",
    );
    // A yen has no parts.
    expect((await refusalOf(record())).fields).toEqual({ amount: "Write a whole number of JPY." });
    await set("GBP");
    expect((await priceListView(desk.frontDesk, clock())).maySetCurrency).toBe(true);
    expect((await priceListView(desk.technician, clock())).maySetCurrency).toBe(false);
  });
});

describe("the list of prices", () => {
  it("is kept by the front desk and the quality manager, and read by all of the laboratory", async () => {
    for (const actor of [desk.technician, desk.signatory, desk.northern.actor])
      expect((await refusalOf(record({}, actor))).code).toBe("not-permitted");
    await record();
    expect((await auditSentences()).at(-1)).toBe(
      "price.recorded: recorded the price “Calibration point”: GBP 42.50 per point from 2026-03-04",
    );
    expect((await priceListView(desk.technician, clock())).current).toMatchObject([
      { money: "42.50", standing: "in-force" },
    ]);
    expect((await refusalOf(priceListView(desk.northern.actor, clock()))).code).toBe("not-permitted");
  });

  it("ends a price with the day before the one that follows it", async () => {
    await record({ amount: "45", validFrom: "2026-04-01" });
    expect(
      (await rows()).map(({ amount, validUntil }) => [
        amount,
        validUntil?.toISOString().slice(0, 10) ?? null,
      ]),
    ).toEqual([
      [4250, "2026-03-31"],
      [4500, null],
    ]);
  });

  it("refuses what is no sum, lies in the past or begins before another, each at its field, and stores nothing", async () => {
    expect((await refusalOf(record({ amount: "1,234.50" }))).fields).toHaveProperty("amount");
    expect((await refusalOf(record({ validFrom: "2026-03-03" }))).fields).toHaveProperty("validFrom");
    expect((await refusalOf(record({ validFrom: "2026-04-01" }))).fields).toHaveProperty("validFrom");
    expect((await refusalOf(record({ key: "minimum-order" }))).fields).toHaveProperty("per");
    expect(await rows()).toHaveLength(2);
  });

  it("lets one of two win who follow the same price at once", async () => {
    const both = await Promise.allSettled(
      [1, 2].map((at) => record({ amount: `5${at}`, validFrom: "2026-05-01" })),
    );
    expect(both.filter(({ status }) => status === "fulfilled")).toHaveLength(1);
  });

  it("is ended once", async () => {
    const id = (await rows()).at(-1)?.id ?? "";
    const end = (lastDay: string) => execute(endPriceOfList, desk.frontDesk, { id, lastDay }, clock);
    expect((await refusalOf(end("2026-03-04"))).fields).toHaveProperty("lastDay");
    await end("2026-12-31");
    expect((await refusalOf(end("2026-12-31"))).code).toBe("wrong-state");
  });

  it("is guarded by the database: what a price is never changes, and two of a kind are not open at once", async () => {
    const admin = await connect(desk.database.runtimeUrl);
    try {
      await admin.query("SELECT set_config('app.scope', 'laboratory', false)");
      await expect(admin.query("UPDATE price_item SET amount = 1")).rejects.toThrow(/permission denied/);
      await expect(admin.query("DELETE FROM price_item")).rejects.toThrow(/permission denied/);
    } finally {
      await admin.end();
    }
    await record({ title: "Set-up", per: "sensor" });
    const again = inScope({ kind: "laboratory" }, (tx) =>
      tx.priceItem.create({
        data: {
          ...{ key: "calibration", title: "Another", per: "sensor", amount: 1 },
          validFrom: new Date("2026-06-01"),
          recordedById: desk.frontDesk.kind === "staff" ? desk.frontDesk.personId : "",
          recordedAt: clock(),
        },
      }),
    );
    await expect(again).rejects.toThrow();
  });

  it("keeps its currency, in which its amounts were meant", async () => {
    expect((await refusalOf(set("EUR"))).message).toContain("Prices were recorded in GBP");
    expect((await priceListView(desk.frontDesk, clock())).maySetCurrency).toBe(false);
  });
});
