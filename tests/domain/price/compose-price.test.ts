import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LineOptions } from "@/lib/domain/order/options";
import { composePrice } from "@/lib/domain/price/compose-price";
import type { ChargedLine } from "@/lib/domain/price/keys";
import { formatMoney, parseMoney, plainMoney } from "@/lib/domain/price/money";
import type { Price } from "@/lib/domain/price/price";

const on = "2026-03-04";
const price = (more: Partial<Price>): Price => ({
  id: JSON.stringify(more),
  key: "calibration",
  title: "Calibration point",
  per: "point",
  typeLetter: null,
  amount: 2500,
  validFrom: "2026-01-01",
  validUntil: null,
  ...more,
});
const line = (more: Partial<ChargedLine> = {}): ChargedLine => ({
  position: 1,
  typeLetter: "K",
  quantity: 3,
  points: 5,
  options: LineOptions.parse({}),
  isSubcontracted: false,
  isOnSite: false,
  ...more,
});
const standard = (...lines: ChargedLine[]) => ({ urgency: "standard" as const, lines });

describe("what an order costs", () => {
  it("is quantity times amount, by point, sensor, line and order, in whole smallest units", () => {
    const list = [
      price({}),
      price({ per: "sensor", title: "Set-up", amount: 1000 }),
      price({ per: "line", title: "Line", amount: 300 }),
      price({ per: "order", title: "Papers", amount: 7 }),
    ];
    const { lines, total, missing } = composePrice(
      standard(line(), line({ position: 2, quantity: 1, points: 2 })),
      list,
      on,
    );
    expect(missing).toEqual([]);
    expect(lines.map(({ title, position, quantity, amount }) => [title, position, quantity, amount])).toEqual(
      [
        ["Calibration point", 1, 15, 37_500],
        ["Set-up", 1, 3, 3000],
        ["Line", 1, 1, 300],
        ["Papers", null, 1, 7],
        ["Calibration point", 2, 2, 5000],
        ["Set-up", 2, 1, 1000],
        ["Line", 2, 1, 300],
      ],
    );
    expect(total).toBe(47_107);
  });

  it("takes the price of the type before that of every type, and the day's before another day's", () => {
    const list = [
      price({ amount: 1, validUntil: "2026-03-03" }),
      price({ amount: 2, validFrom: "2026-03-04" }),
      price({ amount: 9, typeLetter: "S" }),
    ];
    expect(composePrice(standard(line()), list, on).total).toBe(30);
    expect(composePrice(standard(line({ typeLetter: "S" })), list, on).total).toBe(135);
    expect(composePrice(standard(line()), list, "2026-03-03").total).toBe(15);
  });

  it("names what has no price, and gives no total then", () => {
    const wanted = line({
      options: LineOptions.parse({
        sets: "both",
        budget: true,
        evidence: true,
        coefficients: true,
        correctionTable: { step: 10 },
      }),
      isSubcontracted: true,
      isOnSite: true,
    });
    const composed = composePrice({ urgency: "express", lines: [wanted] }, [price({})], on);
    expect(composed.total).toBeNull();
    expect(composed.missing).toHaveLength(9);
    expect(composed.missing).toContain("line 1, type K: express");
    expect(composePrice(standard(line()), [price({ typeLetter: "S" })], on).missing).toEqual([
      "line 1, type K: calibration",
    ]);
    // Recorded as nought is a price.
    expect(composePrice(standard(line()), [price({ amount: 0 })], on).total).toBe(0);
  });

  it("tops a small order up to the minimum, and no other", () => {
    const least = price({ key: "minimum-order", per: "order", amount: 50_000, title: "Minimum order" });
    expect(composePrice(standard(line()), [price({}), least], on)).toMatchObject({
      total: 50_000,
      lines: [{}, { key: "minimum-order", amount: 12_500 }],
    });
    expect(composePrice(standard(line({ quantity: 9 })), [price({}), least], on).lines).toHaveLength(1);
  });

  it("adds up, whatever is ordered", () => {
    const list = [price({}), price({ per: "sensor", amount: 333 }), price({ per: "order", amount: 1 })];
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 200 }), fc.integer({ min: 0, max: 30 })), {
          minLength: 1,
          maxLength: 20,
        }),
        (asked) => {
          const order = standard(
            ...asked.map(([quantity, points], at) => line({ position: at + 1, quantity, points })),
          );
          const expected = asked.reduce(
            (sum, [quantity, points]) => sum + quantity * points * 2500 + quantity * 333,
            1,
          );
          expect(composePrice(order, list, on).total).toBe(expected);
        },
      ),
    );
  });
});

describe("sums of money", () => {
  it.each([
    ["12.5", "GBP", 1250],
    ["0,07", "EUR", 7],
    ["1200", "JPY", 1200],
    ["1.234", "KWD", 1234],
  ])("reads %s %s as %i", (typed, currency, minor) => {
    expect(parseMoney(typed, currency)).toEqual({ ok: true, value: minor });
  });
  it.each([
    ["1,234.50", "GBP"],
    ["1.234", "GBP"],
    ["12.5", "JPY"],
    ["-1", "GBP"],
    ["=1", "GBP"],
    ["", "GBP"],
  ])("does not guess at %j %s", (typed, currency) => {
    expect(parseMoney(typed, currency).ok).toBe(false);
  });
  it("writes what it read", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 2_000_000_000 }),
        fc.constantFrom("GBP", "JPY", "KWD"),
        (minor, currency) => {
          const read = parseMoney(plainMoney(minor, currency), currency);
          expect(read.ok ? read.value : minor >= 10_000_000).toBe(read.ok ? minor : true);
        },
      ),
    );
    expect(formatMoney(123_456_789, "GBP")).toBe("GBP 1\u202f234\u202f567.89");
    expect(formatMoney(5, "GBP")).toBe("GBP 0.05");
    expect(formatMoney(1_234_567, "KWD")).toBe("KWD 1\u202f234.567");
  });
});
