import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { countStatements } from "@/lib/commands/bench/count-statements";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { loadChargeable, loadChargeablePage } from "@/lib/data/invoicing/load-chargeable";
import { execute } from "@/lib/operations/execute";
import { downloadInvoicingFile } from "@/lib/operations/invoicing/download";
import { handOverToInvoicing } from "@/lib/operations/invoicing/hand-over";
import { recordPrice } from "@/lib/operations/price/record";
import { invoicingView } from "@/lib/views/invoicing/invoicing";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { auditSentences, refusalOf } from "../../support/front-desk";
import { signClock, signRun } from "../../support/sign-run";

let database: TestDatabase;
let world: World;
const laboratory = { kind: "laboratory" } as const;

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const handOver = (actor = world.people.desk) => execute(handOverToInvoicing, actor, {}, signClock);
const download = (id: string, actor = world.people.desk) =>
  execute(downloadInvoicingFile, actor, { id }, signClock);
const rows = () => inScope(laboratory, (tx) => tx.invoicingRow.findMany());

describe("what is handed to invoicing", () => {
  it("waits for a certificate and for a price, and says which is missing", async () => {
    const built = await buildRun(world, { owners: ["north", "north", "south"] });
    expect((await refusalOf(handOver())).code).toBe("wrong-state");
    await signRun(world.people.signatory, built);
    expect((await refusalOf(handOver())).code).toBe("wrong-state");
    const view = await invoicingView(world.people.desk, signClock());
    expect(view.waiting).toHaveLength(2);
    expect(view.waiting[0]).toMatchObject({
      kind: "unpriced",
      missing: [expect.stringContaining("calibration")],
    });
    const price = {
      key: "calibration",
      title: "Calibration",
      typeLetter: "",
      validFrom: "2026-03-05",
    } as const;
    await execute(recordPrice, world.people.desk, { ...price, per: "sensor", amount: "100" }, signClock);
    await execute(
      recordPrice,
      world.people.desk,
      { ...price, key: "minimum-order", per: "order", title: "Minimum order", amount: "150" },
      signClock,
    );
  });

  it("is found whole, however small the pages it is read by", async () => {
    await inScope(laboratory, async (tx) => {
      const whole = await loadChargeable(tx, signClock());
      expect(whole).toHaveLength(2);
      expect(await loadChargeable(tx, signClock(), 1)).toEqual(whole);
      const [first, second] = whole.map(({ number }) => number);
      if (!first || !second) throw new Error("two orders wait");
      const behind = await loadChargeablePage(tx, { kind: "after", anchor: first }, signClock(), 1);
      expect(behind).toMatchObject({ rows: [{ number: second }], next: null, previous: second });
      const before = await loadChargeablePage(tx, { kind: "before", anchor: second }, signClock(), 1);
      expect(before).toMatchObject({ rows: [{ number: first }], next: first, previous: null });
    });
    const view = await invoicingView(world.people.desk, signClock());
    expect(view).toMatchObject({ count: 2, next: null, previous: null });
    expect(view.waiting.map(({ kind }) => kind)).toEqual(["priced", "priced"]);
  });

  it("is asked for a page at once, with as many questions for two orders as for one", async () => {
    const page = (size: number) => () =>
      inScope(laboratory, (tx) => loadChargeablePage(tx, { kind: "first" }, signClock(), size));
    expect((await page(2)()).rows).toHaveLength(2);
    expect(await countStatements(page(2))).toBe(await countStatements(page(1)));
  });

  it("goes to the address the customer keeps for invoices, unless the order names another", async () => {
    const northern = await inScope(laboratory, async (tx) => {
      const [order] = await tx.order.findMany({ where: { customerId: world.north.id } });
      if (!order) throw new Error("an order waits");
      return order;
    });
    const of = () =>
      inScope(laboratory, async (tx) => {
        const all = await loadChargeable(tx, signClock());
        const other = all.find(({ number }) => number !== northern.number);
        return [all.find(({ number }) => number === northern.number)?.address, other?.address];
      });
    const [own, others] = await of();
    const keep = (kind: string, title: string, contactName = "") =>
      inScope(laboratory, (tx) =>
        tx.customerAddress.create({
          data: { customerId: northern.customerId, kind, title, addressLines: `${title} Road`, contactName },
        }),
      );
    const elsewhere = await keep("delivery", "A Store");
    expect(await of()).toEqual([own, others]);
    const accounts = await keep("invoice", "Accounts", "The accounts department");
    expect(await of()).toEqual(["The accounts department\nAccounts Road", others]);
    const name = (invoiceAddressId: string | null) =>
      inScope(laboratory, (tx) =>
        tx.order.update({ where: { id: northern.id }, data: { invoiceAddressId } }),
      );
    await name(elsewhere.id);
    expect(await of()).toEqual(["A Store Road", others]);
    await name(null);
    const giveUp = (id: string) =>
      inScope(laboratory, (tx) => tx.customerAddress.update({ where: { id }, data: { active: false } }));
    await giveUp(accounts.id);
    expect(await of()).toEqual([own, others]);
    await keep("invoice", "Head office");
  });

  it("is each thing once, in a numbered file that comes back byte for byte", async () => {
    expect((await refusalOf(handOver(world.people.technician))).code).toBe("not-permitted");
    const { id, number } = await handOver();
    expect(number).toBe("I-2026-0001");
    const { bytes } = await download(id);
    const text = new TextDecoder().decode(bytes);
    expect([...bytes.subarray(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
    // Three sensors, and the difference to the minimum for the customer with one.
    expect(text.trim().split("\r\n")).toHaveLength(5);
    expect(text).toContain("Head office Road");
    expect(text).toContain("minimum-order:order,,,1,50.00,50.00,GBP");
    expect((await rows()).reduce((sum, { amount }) => sum + amount, 0)).toBe(35_000);
    expect((await download(id)).bytes).toEqual(bytes);
    expect((await refusalOf(download(id, world.people.technician))).code).toBe("not-permitted");
    expect((await refusalOf(download("nothing"))).code).toBe("not-found");
    expect((await auditSentences()).join("\n")).toContain(
      "handed I-2026-0001 to invoicing: 4 rows of 2 orders, GBP 350.00",
    );
    expect((await refusalOf(handOver())).code).toBe("wrong-state");
  });

  it("is in one of two files that are made at once, and numbers have no gap", async () => {
    await signRun(world.people.signatory, await buildRun(world, { owners: ["north", "north"] }));
    const both = await Promise.allSettled([handOver(), handOver()]);
    expect(both.filter(({ status }) => status === "fulfilled")).toHaveLength(1);
    const files = await inScope(laboratory, (tx) =>
      tx.invoicingFile.findMany({ orderBy: { number: "asc" } }),
    );
    expect(files.map(({ number }) => number)).toEqual(["I-2026-0001", "I-2026-0002"]);
  });

  it("is refused a second time by the database itself, for a sensor and for an order", async () => {
    for (const row of [
      (await rows()).find(({ sensorId }) => sensorId),
      (await rows()).find(({ sensorId }) => !sensorId),
    ]) {
      if (!row) throw new Error("both kinds were handed over");
      const { id: _, ...again } = row;
      await expect(inScope(laboratory, (tx) => tx.invoicingRow.create({ data: again }))).rejects.toThrow();
    }
  });
});
