import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inScope, type Tx } from "@/lib/data/in-scope";
import { completeFinishedOrder } from "@/lib/data/order/complete-finished-order";
import { loadOrder } from "@/lib/data/order/load-order";
import { setSensorState } from "@/lib/data/sensor/set-state";
import { execute } from "@/lib/operations/execute";
import { collectSensor } from "@/lib/operations/sensor/collect";
import { receiveSensors } from "@/lib/operations/sensor/receive";
import { intakePreviewView } from "@/lib/views/order/intake-preview";
import { receivableView } from "@/lib/views/order/receivable";
import { auditSentences, clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { accepted, intakeInput, lineInput, orderInput, received, recorded } from "../../support/orders";

let desk: FrontDesk;
beforeAll(async () => {
  desk = await openFrontDesk();
});
afterAll(() => desk.close());

const inLaboratory = <T>(work: (tx: Tx) => Promise<T>) => inScope({ kind: "laboratory" }, work);
const stored = async (number: string) =>
  (await inLaboratory((tx) => loadOrder(tx, number))) ?? expect.fail("not stored");
const sensorsOf = async (number: string) => (await stored(number)).lines.flatMap(({ sensors }) => sensors);
const order = (more = {}) => accepted(desk, orderInput(desk.northern.customerId, more));

describe("receiving sensors", () => {
  it("gives each its tag and its intake record, and one audit event each", async () => {
    const number = await order();
    const tags = await received(desk, number, "A1\nB2");
    expect(tags.every((tag) => /^T-\d{6}$/.test(tag))).toBe(true);
    expect((await sensorsOf(number)).map(({ serial, state }) => [serial, state])).toEqual([
      ["A1", "received"],
      ["B2", "received"],
    ]);
    const sentences = await auditSentences();
    expect(sentences).toContain(
      `sensor.received: received sensor ${tags[0]} (serial A1) for order ${number}`,
    );
    expect(sentences).toContain(
      `sensor.received: received sensor ${tags[1]} (serial B2) for order ${number}`,
    );
  });

  it("records the checks of each, and what they found", async () => {
    const number = await order();
    const input = {
      ...intakeInput(number, "A1\nB2"),
      loopResistanceOhm: "12.5",
      each: [
        {},
        { polarity: "reversed" as const, condition: "deviates" as const, conditionNote: "bent tip" },
      ],
    };
    await execute(receiveSensors, desk.technician, input, clock);
    const intakes = await inLaboratory((tx) =>
      tx.intake.findMany({
        where: { sensor: { line: { order: { number } } } },
        orderBy: { sensor: { tag: "asc" } },
      }),
    );
    expect(intakes).toMatchObject([
      { loopResistanceOhm: 12.5, polarity: "ok", condition: "as-described", takenInAt: clock() },
      { loopResistanceOhm: 12.5, polarity: "reversed", condition: "deviates", conditionNote: "bent tip" },
    ]);
    const sentences = await auditSentences();
    expect(sentences.at(-2)).toContain("condition deviates (bent tip); polarity is reversed");
    expect(sentences.at(-1)).toContain("on hold (condition not as described): bent tip");
  });

  it("stores all of a paste or nothing", async () => {
    const number = await order();
    await received(desk, number, "A1");
    const before = await auditSentences();
    for (const serials of ["B2\na1", "B2\nb2", "B2\nC3\nD4", "  \n"])
      expect(await refusalOf(received(desk, number, serials))).toMatchObject({
        code: "invalid",
        fields: { serials: expect.any(String) },
      });
    expect((await sensorsOf(number)).map(({ serial }) => serial)).toEqual(["A1"]);
    expect(await auditSentences()).toEqual(before);
  });

  it("names a serial that is in the house under another label, and takes it in all the same", async () => {
    const first = await order();
    const [tag] = await received(desk, first, "twin-1");
    const number = await order({ lines: [lineInput, { ...lineInput, typeLetter: "N" }] });
    const list = { number, position: 1, bytes: new TextEncoder().encode("serial\nTWIN-1\nother\n") };
    const [group] = (await intakePreviewView(desk.frontDesk, list)).groups;
    expect(group?.sensors.map(({ stillHereAs }) => stillHereAs)).toEqual([tag, null]);
    const come = (serials: string, position = 1) =>
      execute(receiveSensors, desk.frontDesk, { ...intakeInput(number, serials), position }, clock);
    const { tags, twice } = await come("TWIN-1\nother");
    expect(twice).toEqual([tags[0]]);
    const view = () => receivableView(desk.frontDesk, number);
    expect((await view()).twice).toEqual([{ serial: "TWIN-1", tag: tags[0], other: tag }]);
    expect((await come("twin-1x", 2)).twice, "another serial").toEqual([]);
    const left = { tag: tag!, handedOver: "in-person" as const, reason: "taken back" };
    await execute(collectSensor, desk.frontDesk, left, clock);
    expect((await view()).twice, "the first one left").toEqual([]);
  });

  it("waits for acceptance, names a line that is not there, and a day to come", async () => {
    const open = await recorded(desk, orderInput(desk.northern.customerId));
    expect(await refusalOf(received(desk, open, "A1"))).toMatchObject({ code: "wrong-state" });
    const number = await order();
    const receive = (more: object) =>
      refusalOf(execute(receiveSensors, desk.frontDesk, { ...intakeInput(number, "A1"), ...more }, clock));
    expect(await receive({ position: 2 })).toMatchObject({ fields: { position: expect.any(String) } });
    expect(await receive({ receivedOn: "2026-03-30" })).toMatchObject({
      fields: { receivedOn: expect.any(String) },
    });
    expect(await refusalOf(received(desk, "O-2026-9999", "A1"))).toMatchObject({ code: "not-found" });
  });

  it("never takes in more than ordered, also of two at the same moment", async () => {
    const number = await order();
    await Promise.allSettled([received(desk, number, "A1\nB2"), received(desk, number, "C3\nD4")]);
    expect(await sensorsOf(number)).toHaveLength(2);
  });

  it("is not for the signatory or the customer", async () => {
    for (const actor of [desk.signatory, desk.northern.actor])
      expect(
        await refusalOf(execute(receiveSensors, actor, intakeInput("O-2026-0001", "A1"), clock)),
      ).toMatchObject({ code: "not-permitted" });
  });
});

describe("moving sensors along their thread", () => {
  it("moves all or none, and says which is elsewhere", async () => {
    const number = await order();
    await received(desk, number, "A1\nB2");
    const [a, b] = await sensorsOf(number);
    const move = (
      ids: string[],
      from: Parameters<typeof setSensorState>[2],
      to: Parameters<typeof setSensorState>[3],
    ) => inLaboratory((tx) => setSensorState(tx, ids, from, to));
    await move([a!.id], ["received"], "loaded");
    const refusal = await refusalOf(move([a!.id, b!.id], ["received"], "loaded"));
    expect(refusal).toMatchObject({
      code: "wrong-state",
      message: expect.stringContaining(`${a!.tag} is loaded`),
    });
    expect((await sensorsOf(number)).map(({ state }) => state)).toEqual(["loaded", "received"]);
    await move([a!.id, b!.id], ["received", "loaded"], "loaded");
    expect((await sensorsOf(number)).map(({ state }) => state)).toEqual(["loaded", "loaded"]);
    expect(await refusalOf(move(["not-an-id"], ["received"], "loaded"))).toMatchObject({ code: "not-found" });
    await expect(move([a!.id], ["loaded"], "issued")).rejects.toThrow("transition table");
  });
});

describe("handing sensors back", () => {
  const collect = (tag: string, more = {}) =>
    execute(collectSensor, desk.frontDesk, { tag, handedOver: "in-person", ...more }, clock);

  it("needs a reason without a certificate, and completes the order with its last sensor", async () => {
    const number = await order({ lines: [{ ...lineInput, quantity: 2 }] });
    const [first, second] = await received(desk, number, "A1\nB2");
    expect(await refusalOf(collect(first!))).toMatchObject({ fields: { reason: expect.any(String) } });
    await collect(first!, { reason: "sheath cracked" });
    expect(await stored(number)).toMatchObject({ state: "accepted" });
    await collect(second!, { reason: "withdrawn", handedOver: "carrier" });
    expect(await stored(number)).toMatchObject({ state: "completed" });
    expect((await auditSentences()).slice(-2)).toEqual([
      `sensor.collected: handed back sensor ${second} of order ${number} by carrier without a certificate: withdrawn`,
      `order.completed: completed order ${number}: 2 sensors finished`,
    ]);
    expect(await refusalOf(collect(second!, { reason: "again" }))).toMatchObject({ code: "wrong-state" });
  });

  it("is complete once the last certificate is issued, before anything is collected", async () => {
    const number = await order({ lines: [{ ...lineInput, quantity: 1 }] });
    await received(desk, number, "A1");
    const [sensor] = await sensorsOf(number);
    const complete = () => inLaboratory((tx) => completeFinishedOrder(tx, number));
    expect(await complete()).toEqual([]);
    await inLaboratory(async (tx) => {
      for (const [from, to] of [
        ["received", "loaded"],
        ["loaded", "measured"],
        ["measured", "evaluated"],
        ["evaluated", "in-review"],
        ["in-review", "issued"],
      ] as const)
        await setSensorState(tx, [sensor!.id], [from], to);
    });
    expect((await complete()).map(({ action }) => action)).toEqual(["order.completed"]);
    await collect(sensor!.tag);
    expect((await auditSentences()).at(-1)).toBe(
      `sensor.collected: handed back sensor ${sensor!.tag} of order ${number} in person`,
    );
  });

  it("is for the front desk", async () => {
    const work = execute(collectSensor, desk.technician, { tag: "T-000001", handedOver: "in-person" }, clock);
    expect(await refusalOf(work)).toMatchObject({ code: "not-permitted" });
    expect(await refusalOf(collect("T-999999"))).toMatchObject({ code: "not-found" });
  });
});
