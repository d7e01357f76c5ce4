import { describe, expect, it } from "vitest";
import { decideChange } from "@/lib/domain/order/decide-change";
import { orderSnapshot, snapshotDifferences } from "@/lib/domain/order/order-snapshot";
import { requestText } from "@/lib/domain/order/request-text";
import { RecordOrderInput } from "@/lib/domain/order/schema";
import type { Order, OrderLine } from "@/lib/domain/order/types";
import { decideUndisturbed } from "@/lib/domain/order/undisturbed";
import type { SensorState } from "@/lib/domain/sensor/transitions";
import { lineInput, orderInput } from "../../support/orders";

const customerId = "00000000-0000-4000-8000-000000000001";
const lineId = "00000000-0000-4000-8000-00000000000a";
const draft = (line: object = {}, terms: object = {}) =>
  RecordOrderInput.parse({
    ...orderInput(customerId, { lines: [{ ...lineInput, lineId, ...line }] as never }),
    ...terms,
  });
const sensor = (tag: string, state: SensorState) => ({ id: tag, tag, serial: tag, state });

/** An accepted order that says what the draft says, with these sensors on its line. */
const order = (sensors: readonly OrderLine["sensors"][number][] = [], more: Partial<Order> = {}): Order => {
  const { customerId: _, ...said } = draft();
  return {
    ...said,
    ...{ id: "o", number: "O-1", customerId, state: "accepted", origin: "desk", version: 2 },
    ...{ recordedById: "p", recordedAt: new Date(0), acceptedById: "p", acceptedAt: new Date(0) },
    lines: said.lines.map((line) => ({ ...line, id: lineId, position: 1, sensors })),
    ...more,
  };
};
const differences = [{ where: "Note", before: "", after: "x" }];
const decide = (stored: Order, changed: ReturnType<typeof draft>, certified: readonly string[] = []) =>
  decideChange(stored, changed, new Set(certified), differences);
const fieldsOf = (...args: Parameters<typeof decide>) => {
  const decision = decide(...args);
  return decision.ok ? null : Object.keys(decision.refusal.fields ?? {});
};

describe("a change of an accepted order", () => {
  it("is of an accepted order, and of something", () => {
    expect(decide(order(), draft({ setpoints: "300" }))).toMatchObject({ ok: true });
    expect(decideChange(order(), draft(), new Set(), [])).toMatchObject({
      refusal: { message: expect.stringContaining("Nothing differs") },
    });
    for (const state of ["recorded", "requested", "completed", "cancelled"] as const)
      expect(decide(order([], { state }), draft({ setpoints: "300" }))).toMatchObject({
        refusal: { code: "wrong-state" },
      });
  });

  it("leaves what sensors are, and takes no fewer than came", () => {
    const came = order([sensor("T-1", "received"), sensor("T-2", "received")]);
    expect(
      fieldsOf(came, draft({ typeLetter: "N", protection: "bare-wire", construction: "other" })),
    ).toEqual(["lines.0.typeLetter", "lines.0.protection", "lines.0.construction"]);
    expect(fieldsOf(came, draft({ quantity: "1" }))).toEqual(["lines.0.quantity"]);
    expect(fieldsOf(came, draft({ quantity: "2", setpoints: "300" }))).toBeNull();
    expect(fieldsOf(order(), draft({ typeLetter: "N" }))).toBeNull();
  });

  it.each([
    ["setpoints", { setpoints: "300 500" }],
    ["the class", { tolerance: "2" }],
    ["the unit", { temperatureUnit: "F" }],
    ["an option", { budget: "on" }],
    ["the terms of use", { maximum: "1100" }],
    ["where it is done", { performedAt: "customer-site", siteAddress: "Works Road" }],
  ])("leaves %s of a line whose sensor is in review or issued, and changes it before", (_, line) => {
    for (const state of ["in-review", "issued"] as const)
      expect(fieldsOf(order([sensor("T-1", state)]), draft(line))).toEqual(["lines.0.setpoints"]);
    expect(fieldsOf(order([sensor("T-1", "collected")]), draft(line), ["T-1"])).toEqual([
      "lines.0.setpoints",
    ]);
    for (const state of ["received", "loaded", "measured", "evaluated"] as const)
      expect(fieldsOf(order([sensor("T-1", state)]), draft(line))).toBeNull();
  });

  it("leaves the rule, the digits and the rule set once something is issued under them", () => {
    const terms = { decisionRule: "simple", uncertaintyDigits: "1" };
    const issued = order([sensor("T-1", "issued")]);
    expect(fieldsOf(issued, draft({}, terms))).toEqual(["decisionRule", "uncertaintyDigits"]);
    expect(fieldsOf(issued, draft({}, { guardBandRatio: "2" }))).toEqual(["decisionRule"]);
    expect(fieldsOf(issued, draft({}, { decisionRuleAgreedBy: "Somebody else" }))).toEqual(["decisionRule"]);
    expect(fieldsOf(issued, draft({}, { falseAcceptancePercent: "7" })), "not of this rule").toBeNull();
    expect(
      fieldsOf(
        issued,
        draft({ intervalChoice: "agreed", largestInterval: "200" }, { ruleSet: "audited-heat-treatment" }),
      ),
    ).toContain("ruleSet");
    expect(fieldsOf(issued, draft({}, { note: "x", purchaseOrder: "y", urgency: "express" }))).toBeNull();
    expect(fieldsOf(order([sensor("T-1", "measured")]), draft({}, terms))).toBeNull();
  });

  it("takes a rule set named for the same terms, though its figure was once kept in another unit", () => {
    const fahrenheit = { temperatureUnit: "F", setpoints: "600 850" } as const;
    const named = draft({ ...fahrenheit, intervalChoice: "ams2750" });
    const issued = order([sensor("T-1", "issued")]);
    const stored = (largestIntervalCelsius: number): Order => ({
      ...issued,
      lines: issued.lines.map((line, at) => {
        const { lineId: _, ...said } = named.lines[at]!;
        return { ...line, ...said, useTerms: { ...said.useTerms, largestIntervalCelsius } };
      }),
    });
    expect(fieldsOf(stored(140), named)).toBeNull();
    const agreed = draft({ ...fahrenheit, intervalChoice: "agreed", largestInterval: "250" });
    expect(fieldsOf(stored(140), agreed)).toEqual(["lines.0.setpoints"]);
  });

  it("loses no line with sensors, and knows its lines", () => {
    const came = order([sensor("T-1", "received")]);
    expect(fieldsOf(came, draft({ lineId: "" }))).toEqual(["lines"]);
    expect(fieldsOf(order(), draft({ lineId: "" }))).toBeNull();
    expect(fieldsOf(order(), draft({ lineId: customerId }))).toEqual(["lines.0.construction"]);
  });
});

describe("what a change changed", () => {
  const said = (line: object = {}, terms: object = {}) => orderSnapshot(draft(line, terms), []);
  it("is told word for word, by line", () => {
    expect(snapshotDifferences(said(), said())).toEqual([]);
    expect(
      snapshotDifferences(said(), said({ setpoints: "300", groupName: "zone 3" }, { note: "soon" })),
    ).toEqual([
      { where: "Note", before: "", after: "soon" },
      { where: "Line 1, setpoints", before: "300 500 700 900 1000 °C", after: "300 °C" },
      { where: "Line 1, group", before: "", after: "zone 3" },
    ]);
  });

  it("tells lines that came and lines that went", () => {
    const [come] = snapshotDifferences({ ...said(), lines: [] }, said({ lineId: "" }));
    expect(come).toMatchObject({
      where: "Line 1, new",
      before: "",
      after: expect.stringContaining("3 × type K"),
    });
    const [gone] = snapshotDifferences(said(), { ...said(), lines: [] });
    expect(gone).toMatchObject({ where: "Line 1 of before, taken away", after: "" });
  });

  it("is also how a request is kept: every word of it", () => {
    const text = requestText(said({ groupName: "zone 3" }, { note: "please call" }));
    for (const word of ["zone 3", "300 500 700 900 1000 °C", "how many: 3", "Note: please call"])
      expect(text).toContain(word);
    expect(requestText(said())).not.toContain("Note:");
    expect(requestText(said(), "O-7")).toContain(
      "Once more, as for O-7: rule set none, decision rule guarded acceptance (guard band w = 1 × U).",
    );
  });
});

describe("a run", () => {
  const open = { changeId: "c", orderNumber: "O-7", sequence: 1 };
  it("goes on where nothing is open, and stands still where something is", () => {
    expect(decideUndisturbed({ number: "R-1" }, [])).toMatchObject({ ok: true });
    expect(decideUndisturbed({ number: "R-1" }, [open, open])).toMatchObject({
      refusal: {
        code: "rule",
        message: expect.stringContaining("Run R-1 stands still: order O-7 was changed"),
      },
    });
  });
});
