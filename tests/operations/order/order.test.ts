import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { loadOrder } from "@/lib/data/order/load-order";
import { execute } from "@/lib/operations/execute";
import { acceptOrder } from "@/lib/operations/order/accept";
import { amendOrder } from "@/lib/operations/order/amend";
import { cancelOrder } from "@/lib/operations/order/cancel";
import { recordOrder } from "@/lib/operations/order/record";
import { receiveSensors } from "@/lib/operations/sensor/receive";
import { auditSentences, clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { accepted, answers, intakeInput, lineInput, orderInput, recorded } from "../../support/orders";

let desk: FrontDesk;
beforeAll(async () => {
  desk = await openFrontDesk();
});
afterAll(() => desk.close());

const stored = async (number: string) =>
  (await inScope({ kind: "laboratory" }, (tx) => loadOrder(tx, number))) ??
  expect.fail(`${number} is not stored`);
const input = (more = {}) => orderInput(desk.northern.customerId, more);

describe("recording an order", () => {
  it("stores it with its lines as typed, and says so in the audit log", async () => {
    const lines = [
      lineInput,
      { ...lineInput, typeLetter: "S" as const, temperatureUnit: "F" as const, setpoints: "600 1832" },
    ];
    const number = await recorded(desk, input({ lines }));
    expect(number).toMatch(/^O-2026-\d{4}$/);
    const order = await stored(number);
    expect(order).toMatchObject({
      state: "recorded",
      customerId: desk.northern.customerId,
      guardBandRatio: 1,
      decisionRuleAgreedOn: "2026-03-02",
      version: 1,
      recordedAt: clock(),
    });
    expect(order.lines[1]?.setpoints).toEqual([
      { typed: "600", celsius: 2840 / 9 },
      { typed: "1832", celsius: 1000 },
    ]);
    expect(await auditSentences()).toContain(`order.recorded: recorded order ${number}: 2 lines, 6 sensors`);
  });

  it("stores each tolerance and each rule as agreed, and reads them back", async () => {
    const lines = [
      { ...lineInput, tolerance: "astm-special" as const },
      { ...lineInput, tolerance: "own" as const, ownLimit: "2.5" },
      {
        ...lineInput,
        tolerance: "own" as const,
        ownLimit: "5",
        temperatureUnit: "F" as const,
        setpoints: "600",
      },
      { ...lineInput, tolerance: "none" as const },
    ];
    const risk = { decisionRule: "target-risk" as const, falseAcceptancePercent: "5", guardBandRatio: "1" };
    const order = await stored(await recorded(desk, input({ ...risk, lines })));
    expect(order).toMatchObject({
      decisionRule: "target-risk",
      falseAcceptancePercent: 5,
      guardBandRatio: null,
    });
    expect(order.lines.map(({ tolerance, ownLimit = null }) => [tolerance, ownLimit])).toEqual([
      ["astm-special", null],
      ["own", 2.5],
      ["own", 5],
      ["none", null],
    ]);
    const rows = await inScope({ kind: "laboratory" }, (tx) =>
      tx.orderLine.findMany({ where: { orderId: order.id }, orderBy: { position: "asc" } }),
    );
    expect(rows.map((row) => [row.toleranceStandard, row.toleranceClass])).toEqual([
      ["ASTM E230/E230M", "special"],
      ["customer's own limit", "± 2.5 °C"],
      ["customer's own limit", "± 5 °F"],
      [null, null],
    ]);
    const binary = { decisionRule: "guarded-binary" as const, falseAcceptancePercent: "5" };
    expect(await stored(await recorded(desk, input(binary)))).toMatchObject({
      decisionRule: "guarded-binary",
      guardBandRatio: 1,
      falseAcceptancePercent: null,
    });
  });

  it("numbers without a gap, also after a refusal", async () => {
    const first = await recorded(desk, input());
    await refusalOf(recorded(desk, input({ decisionRuleAgreedOn: "2026-03-09" })));
    const second = await recorded(desk, input());
    expect(Number(second.slice(-4)) - Number(first.slice(-4))).toBe(1);
  });

  it("refuses at the field, and stores nothing", async () => {
    const before = await auditSentences();
    const lines = [{ ...lineInput, setpoints: "900 300" }];
    expect(await refusalOf(recorded(desk, input({ lines })))).toMatchObject({
      code: "invalid",
      fields: { "lines.0.setpoints": expect.stringContaining("low to high") },
    });
    expect(await refusalOf(recorded(desk, input({ decisionRuleAgreedOn: "2026-03-09" })))).toMatchObject({
      fields: { decisionRuleAgreedOn: expect.any(String) },
    });
    const nobody = { customerId: "00000000-0000-4000-8000-000000000001" };
    expect(await refusalOf(recorded(desk, input(nobody)))).toMatchObject({
      fields: { customerId: expect.any(String) },
    });
    expect(await auditSentences()).toEqual(before);
  });

  it("is for the front desk", async () => {
    for (const actor of [desk.technician, desk.signatory, desk.northern.actor])
      expect(await refusalOf(execute(recordOrder, actor, input(), clock))).toMatchObject({
        code: "not-permitted",
      });
  });
});

describe("amending an order", () => {
  const amended = (number: string, version: number, more = {}) =>
    execute(amendOrder, desk.frontDesk, { ...input(more), number, version }, clock);

  it("puts new lines in place of the old ones while nobody has accepted it", async () => {
    const number = await recorded(desk, input({ lines: [lineInput, lineInput] }));
    await amended(number, 1, {
      lines: [{ ...lineInput, quantity: 5 }],
      decisionRule: "simple",
      guardBandRatio: "",
    });
    const order = await stored(number);
    expect(order).toMatchObject({ version: 2, decisionRule: "simple", guardBandRatio: null });
    expect(order.lines.map(({ quantity }) => quantity)).toEqual([5]);
    expect(await auditSentences()).toContain(
      `order.amended: amended order ${number} to version 2: 1 line, 5 sensors`,
    );
  });

  it("says when somebody saved in between", async () => {
    const number = await recorded(desk, input());
    await amended(number, 1);
    expect(await refusalOf(amended(number, 1))).toMatchObject({ code: "changed-meanwhile" });
  });

  it("refuses once accepted, and an order that is not there", async () => {
    const number = await accepted(desk, input());
    expect(await refusalOf(amended(number, 2))).toMatchObject({ code: "wrong-state" });
    expect(await refusalOf(amended("O-2026-9999", 1))).toMatchObject({ code: "not-found" });
  });

  it("is for the front desk", async () => {
    const work = execute(
      amendOrder,
      desk.technician,
      { ...input(), number: "O-2026-0001", version: 1 },
      clock,
    );
    expect(await refusalOf(work)).toMatchObject({ code: "not-permitted" });
  });
});

describe("accepting an order", () => {
  const accept = (number: string, more = {}) =>
    execute(acceptOrder, desk.frontDesk, { ...answers, number, toldCustomer: "on", ...more }, clock);

  it("fixes it, by whom and when, with the review in the audit log", async () => {
    const number = await recorded(desk, input());
    await accept(number);
    expect(await stored(number)).toMatchObject({ state: "accepted", version: 2, acceptedAt: clock() });
    expect((await auditSentences()).join("\n")).toContain(
      `order.accepted: accepted order ${number} after contract review`,
    );
  });

  it("wants each of the four answers", async () => {
    const number = await recorded(desk, input());
    const work = accept(number, { requirementsUnderstood: undefined, externalProviders: undefined });
    expect(Object.keys((await refusalOf(work)).fields ?? {}).sort()).toEqual([
      "externalProviders",
      "requirementsUnderstood",
    ]);
  });

  it("refuses an incomplete order, and one the customer has not heard all about", async () => {
    const open = await recorded(desk, input({ decisionRuleAgreedBy: "", decisionRuleAgreedOn: "" }));
    expect(await refusalOf(accept(open))).toMatchObject({
      code: "rule",
      message: expect.stringContaining("not agreed"),
    });
    const far = await recorded(desk, input({ lines: [{ ...lineInput, setpoints: "300 1100" }] }));
    // Nothing is characterised in this database, so none of its points can be done yet: told as well.
    expect(await refusalOf(accept(far, { toldCustomer: undefined }))).toMatchObject({
      message: expect.stringContaining("300 °C, 1100 °C cannot be done as things stand. No furnace config"),
      fields: { toldCustomer: expect.any(String) },
    });
    await accept(far);
    expect((await auditSentences()).at(-1)).toContain("having told the customer 2 things");
  });

  it("refuses a point no furnace reaches, told or not", async () => {
    const beyond = await recorded(desk, input({ lines: [{ ...lineInput, setpoints: "300 1300" }] }));
    expect(await refusalOf(accept(beyond))).toMatchObject({
      message: expect.stringContaining("1300 °C cannot be reached here"),
      fields: { "lines.0.setpoints": expect.any(String) },
    });
  });

  it("refuses what was amended since it was read", async () => {
    const number = await recorded(desk, input());
    await execute(amendOrder, desk.frontDesk, { ...input(), number, version: 1 }, clock);
    expect(await refusalOf(accept(number))).toMatchObject({ code: "changed-meanwhile" });
  });

  it("happens once, of two at the same moment", async () => {
    const number = await recorded(desk, input());
    const outcomes = await Promise.allSettled([accept(number), accept(number)]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(["fulfilled", "rejected"]);
    const told = (await auditSentences()).filter((line) => line.includes(`accepted order ${number}`));
    expect(told).toHaveLength(1);
  });

  it("is not for the technician", async () => {
    const work = execute(acceptOrder, desk.technician, { ...answers, number: "O-2026-0001" }, clock);
    expect(await refusalOf(work)).toMatchObject({ code: "not-permitted" });
  });
});

describe("cancelling an order", () => {
  const cancel = (number: string, reason = "the customer withdrew it") =>
    execute(cancelOrder, desk.frontDesk, { number, reason }, clock);

  it("keeps its record, with the reason in the audit log", async () => {
    const number = await accepted(desk, input());
    await execute(receiveSensors, desk.frontDesk, intakeInput(number, "C1"), clock);
    await cancel(number);
    expect(await stored(number)).toMatchObject({ state: "cancelled" });
    expect(await auditSentences()).toContain(
      `order.cancelled: cancelled order ${number}: the customer withdrew it`,
    );
    expect(await refusalOf(cancel(number))).toMatchObject({ code: "wrong-state" });
  });

  it("wants a reason, and the right role", async () => {
    const number = await recorded(desk, input());
    expect(await refusalOf(cancel(number, " "))).toMatchObject({ fields: { reason: expect.any(String) } });
    const work = execute(cancelOrder, desk.signatory, { number, reason: "because" }, clock);
    expect(await refusalOf(work)).toMatchObject({ code: "not-permitted" });
  });
});
