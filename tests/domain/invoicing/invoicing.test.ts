import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ChargeableOrder, chargeKey, chargesOf } from "@/lib/domain/invoicing/charges";
import { composeInvoicingRows } from "@/lib/domain/invoicing/compose-file";
import { csvBytes, csvText } from "@/lib/domain/invoicing/csv";

/** A reader of RFC 4180 of the test's own. */
const readCsv = (text: string): string[][] => {
  const rows: string[][] = [[]];
  let cell = "";
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at]!;
    if (quoted && sign === '"' && text[at + 1] === '"') {
      cell += '"';
      at += 1;
    } else if (sign === '"') quoted = !quoted;
    else if (!quoted && sign === ",") {
      rows.at(-1)!.push(cell);
      cell = "";
    } else if (!quoted && sign === "\r" && text[at + 1] === "\n") {
      rows.at(-1)!.push(cell);
      rows.push([]);
      cell = "";
      at += 1;
    } else cell += sign;
  }
  return rows.slice(0, -1);
};

describe("a table for a spreadsheet", () => {
  it.each(["=1+1", "+49 30", "-2", "@SUM(A1)", "\t=1", "\r=1", '=HYPERLINK("http://x","y")'])(
    "makes %j text, so that it is not run",
    (text) => {
      expect(readCsv(csvText([[text]]))).toEqual([[`'${text}`]]);
    },
  );

  it("leaves its own numbers numbers, and says that it is UTF-8", () => {
    expect(csvText([[{ number: "-1.50" }, "Höfle, Ines"]])).toBe('-1.50,"Höfle, Ines"\r\n');
    expect([...csvBytes([["x"]]).subarray(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
  });

  it("gives back whatever was put in, and never a cell that begins a formula", () => {
    const anyText = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.string({ unit: fc.constantFrom(..."=+-@\t\r\n\",' a1") }),
    );
    fc.assert(
      fc.property(
        fc.array(fc.array(anyText, { minLength: 1, maxLength: 5 }), { minLength: 1, maxLength: 5 }),
        (rows) => {
          const read = readCsv(csvText(rows));
          expect(read.map((row) => row.map((cell) => cell.replace(/^'(?=[=+\-@\t\r])/, "")))).toEqual(
            rows.map((row) => row.map((cell) => cell.replace(/^'(?=[=+\-@\t\r])/, ""))),
          );
          for (const cell of read.flat()) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
        },
      ),
      { numRuns: 2000 },
    );
  });
});

const sensor = (id: string) => ({ id, tag: `T-${id}`, serial: `S-${id}` });
const price = (more: object) => ({
  ...{
    key: "calibration",
    per: "point",
    title: "Calibration point",
    position: 1,
    quantity: 15,
    unitAmount: 2500,
    amount: 37_500,
  },
  ...more,
});
const order = (more: Partial<ChargeableOrder> = {}): ChargeableOrder => ({
  id: "o",
  number: "O-1",
  price: [
    price({}),
    price({ per: "sensor", title: "Set-up", quantity: 3, unitAmount: 1000, amount: 3000 }),
    price({ key: "budget", per: "line", title: "Budget", quantity: 1, unitAmount: 700, amount: 700 }),
    price({
      key: "express",
      per: "order",
      title: "Express",
      position: null,
      quantity: 1,
      unitAmount: 9000,
      amount: 9000,
    }),
  ] as ChargeableOrder["price"],
  lines: [{ position: 1, quantity: 3, typeLetter: "K", finished: [sensor("a"), sensor("b")] }],
  handedOver: new Set(),
  ...more,
});

describe("what can be charged", () => {
  it("is each finished sensor, and once what stands on its line and its order", () => {
    expect(
      chargesOf(order()).map(({ sensorId, key, quantity, amount }) => [sensorId, key, quantity, amount]),
    ).toEqual([
      ["a", "calibration:point", 5, 12_500],
      ["a", "calibration:sensor", 1, 1000],
      ["b", "calibration:point", 5, 12_500],
      ["b", "calibration:sensor", 1, 1000],
      [null, "budget:line:1", 1, 700],
      [null, "express:order", 1, 9000],
    ]);
    expect(
      chargesOf(order({ lines: [{ position: 1, quantity: 3, typeLetter: "K", finished: [] }] })),
    ).toEqual([]);
  });

  it("is nothing twice: in parts it adds up to the price of the order", () => {
    const all = [sensor("a"), sensor("b"), sensor("c")];
    const first = chargesOf(order());
    const handedOver = new Set(first.map(({ sensorId, key }) => chargeKey(sensorId, key)));
    const lines = [{ position: 1, quantity: 3, typeLetter: "K", finished: all }];
    const second = chargesOf(order({ lines, handedOver }));
    expect(second.map(({ sensorId }) => sensorId)).toEqual(["c", "c"]);
    const total = [...first, ...second].reduce((sum, { amount }) => sum + amount, 0);
    expect(total).toBe(order().price.reduce((sum, { amount }) => sum + amount, 0));
    const everything = new Set([...first, ...second].map(({ sensorId, key }) => chargeKey(sensorId, key)));
    expect(chargesOf(order({ lines, handedOver: everything }))).toEqual([]);
  });

  it("names a sensor at nought where the price is by line alone, so that it is known to be handed over", () => {
    const flat = order({ price: order().price.filter(({ per }) => per === "line") });
    expect(chargesOf(flat).map(({ key, amount }) => [key, amount])).toEqual([
      ["included", 0],
      ["included", 0],
      ["budget:line:1", 700],
    ]);
  });

  it("stands in the file row by row, with sums as numbers and names as text", () => {
    const invoiced = {
      number: "O-1",
      customer: "=Bad & Co",
      purchaseOrder: "-7",
      address: "1 Road\nTown",
      charges: chargesOf(order()),
    };
    const rows = readCsv(
      csvText(composeInvoicingRows({ number: "I-1", on: "2026-03-05", currency: "GBP" }, [invoiced])),
    );
    expect(rows).toHaveLength(7);
    expect(rows[1]).toEqual([
      ...[
        "I-1",
        "2026-03-05",
        "O-1",
        "'-7",
        "'=Bad & Co",
        "1 Road, Town",
        "1",
        "Calibration point",
        "calibration:point",
      ],
      ...["T-a", "S-a", "5", "25.00", "125.00", "GBP"],
    ]);
  });
});
