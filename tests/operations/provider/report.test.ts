import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { moveSensors } from "@/lib/operations/custody/move";
import { execute } from "@/lib/operations/execute";
import { decideReport } from "@/lib/operations/provider/decide-report";
import { recordReport } from "@/lib/operations/provider/record-report";
import { collectSensor } from "@/lib/operations/sensor/collect";
import { ship } from "@/lib/operations/shipment/ship";
import { boardView } from "@/lib/views/board";
import { orderView } from "@/lib/views/order/order";
import { customerPartsView, orderPartsView } from "@/lib/views/order/parts";
import { portalOrderView } from "@/lib/views/portal-orders";
import { providerReportFileView, providerReportsView } from "@/lib/views/provider-reports";
import { sensorView } from "@/lib/views/sensor/sensor";
import { orderShipmentsView } from "@/lib/views/shipment/order-shipments";
import { todayView } from "@/lib/views/today";
import { approveIssuer, certificateFile } from "../../support/calibrate";
import { clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { accepted, lineInput, orderInput, received } from "../../support/orders";

const provider = "Other Laboratory (invented)";
let desk: FrontDesk;
let order: string;
let tag: string;
beforeAll(async () => {
  desk = await openFrontDesk();
  const manager = { ...desk.signatory, roles: ["quality-manager"] } as typeof desk.signatory;
  const providerId = await approveIssuer(manager, clock, provider);
  const line = { ...lineInput, quantity: "1", setpoints: "600 1000", providerId };
  order = await accepted(desk, orderInput(desk.northern.customerId, { lines: [line] }), {
    externalProviders: "approved",
  });
  tag = (await received(desk, order, "EXT-1"))[0]!;
});
afterAll(() => desk.close());

const { fileName, bytes } = certificateFile("external");
const row = (celsius: number, value: string) => ({
  orderedCelsius: celsius,
  nominalCelsius: `${celsius}`,
  ...(value === ""
    ? { value, expanded: "", coverageFactor: "" }
    : { value, expanded: "1,10", coverageFactor: "2" }),
});
const record = (more: object = {}) =>
  execute(
    recordReport,
    desk.technician,
    {
      sensor: tag,
      certificate: "X-77",
      issuedOn: "2026-03-04",
      accreditation: "INV 9, as they print it",
      unit: "celsius",
      results: [row(600, "−0,50"), row(1000, "")],
      document: { fileName, bytes },
      ...more,
    },
    clock,
  );
const decide = (actor: typeof desk.signatory, id: string, more: object = {}) =>
  execute(decideReport, actor, { id, decision: "accepted", ...more }, clock);
const stateOf = async () =>
  (await inScope({ kind: "laboratory" }, (tx) => tx.sensor.findUniqueOrThrow({ where: { tag } }))).state;
const portal = () => portalOrderView(desk.northern.actor, order);
const laboratory = <T>(work: Parameters<typeof inScope<T>>[1]) => inScope({ kind: "laboratory" }, work);

/** On the board, with the order promised for the day itself. */
const outlook = async () =>
  (await boardView(desk.frontDesk, clock())).doubtful.find(({ number }) => number === order)?.outlook.reasons;

const waitingFor = async (actor: typeof desk.signatory, list: string) =>
  (await todayView(actor, "2026-03-03")).find(({ key }) => key === list);

describe("what an external provider measured", () => {
  it("is recorded only of what went there, whole, from a PDF, with figures at ordered setpoints", async () => {
    expect((await waitingFor(desk.frontDesk, "provider"))?.items[0]?.label).toBe(tag);
    await laboratory((tx) => tx.order.update({ where: { number: order }, data: { promisedOn: clock() } }));
    // No furnace of ours is asked for it.
    expect(await outlook()).toEqual([
      "0 working days left, 1 needed",
      "1 sensor measured elsewhere, without certificate",
    ]);
    expect((await refusalOf(record())).message).toMatch(/by its custody log .* never went/i);
    const sent = { tags: tag, kind: "to-provider" as const, whom: provider, condition: "subcontracted" };
    const elsewhere = execute(moveSensors, desk.technician, { ...sent, whom: "Somebody else" }, clock);
    expect((await refusalOf(elsewhere)).fields?.whom).toMatch(`${tag} goes to ${provider}`);
    await execute(moveSensors, desk.technician, sent, clock);
    const fields = async (more: object) => Object.keys((await refusalOf(record(more))).fields ?? {});
    expect(await fields({ document: { fileName, bytes: new TextEncoder().encode("no PDF") } })).toEqual([
      "document",
    ]);
    expect(await fields({ document: { fileName, bytes: new Uint8Array(10_000_001) } })).toEqual(["document"]);
    expect(await fields({ results: [row(600, "")] })).toEqual(["results.0.value"]);
    expect(await fields({ results: [{ ...row(600, "0.5"), expanded: "0" }] })).toEqual([
      "results.0.expanded",
    ]);
    expect(await fields({ results: [{ ...row(600, "0.5"), coverageFactor: "" }] })).toEqual([
      "results.0.coverageFactor",
    ]);
    expect(await fields({ results: [row(650, "0.5")] })).toEqual(["results.0.value"]);
    for (const issuedOn of ["2024-12-31", "2026-03-02", "2026-03-05"])
      expect(await fields({ issuedOn })).toEqual(["issuedOn"]);
    expect(await fields({ results: [row(600, "24905")] })).toEqual(["results.0.value"]);
    expect(await fields({ correction: "nothing to correct" })).toEqual(["correction"]);
    expect((await refusalOf(execute(recordReport, desk.signatory, {} as never, clock))).code).toBe(
      "not-permitted",
    );
    expect(await laboratory((tx) => tx.providerReport.count())).toBe(0);
  });

  it("counts for nobody until another person accepts it; then the sensor is reported and its customer sees it", async () => {
    const first = await record();
    const why = { decision: "rejected", reason: "600 °C reads +0.50" };
    await decide(desk.signatory, first.id, why);
    expect((await sensorView(desk.frontDesk, tag)).next).toMatch(
      /X-77 was rejected \(600 °C reads \+0\.50\)/,
    );
    expect((await waitingFor(desk.frontDesk, "provider"))?.items[0]?.detail).toMatch(
      /rejected, to be recorded again$/,
    );
    const correction = "the sign was wrong";
    const { id } = await record({ correction });
    expect((await refusalOf(record({ correction }))).code).toBe("wrong-state");
    expect((await waitingFor(desk.signatory, "provider-check"))?.items[0]?.label).toBe(tag);
    const self = { ...desk.signatory, personId: personIdOf(desk.technician) } as typeof desk.signatory;
    expect((await refusalOf(decide(self, id))).message).toMatch(/You recorded/);
    const own = laboratory((tx) =>
      tx.providerReportDecision.create({
        data: {
          ...{ reportId: id, customerId: desk.northern.customerId, decision: "accepted" },
          ...{ decidedById: personIdOf(desk.technician), decidedAt: clock() },
        },
      }),
    );
    await expect(own).rejects.toThrow(/another person decides/);
    const shelf = laboratory((tx) => tx.sensor.update({ where: { tag }, data: { state: "issued" } }));
    await expect(shelf).rejects.toThrow();
    expect(await stateOf()).toBe("received");
    expect((await portal()).sensors[0]?.external).toBeNull();
    expect((await refusalOf(providerReportFileView(desk.northern.actor, id))).code).toBe("not-found");

    await decide(desk.signatory, id);
    expect((await waitingFor(desk.signatory, "provider-check"))?.count).toBe(0);
    expect((await waitingFor(desk.frontDesk, "provider"))?.count).toBe(0);
    expect(await stateOf()).toBe("issued");
    expect(await outlook()).toBeUndefined();
    expect((await portal()).isOpen).toBe(false);
    expect((await portal()).sensors[0]?.external).toMatchObject({
      said: `Measured by ${provider}, not by this laboratory`,
      certificate: "X-77",
      // The one before it never counted: nothing was replaced.
      correction: "",
      href: `/api/provider-reports/${id}`,
      lines: ["600 °C: deviation −0.50 °C, U = 1.10 °C (k = 2)"],
    });
    expect((await providerReportFileView(desk.northern.actor, id)).bytes).toEqual(new Uint8Array(bytes));
    expect((await refusalOf(providerReportFileView(desk.southern.actor, id))).code).toBe("not-found");
    const [line] = await orderPartsView(desk.frontDesk, order);
    expect(line?.sensors[0]).toMatchObject({
      rows: [{ cells: [{ state: "reported", by: provider }, { state: "not-reached" }] }],
      next: expect.stringMatching(/certificate X-77: it is still there.*came back/),
    });
    const [theirs] = await customerPartsView(desk.northern.actor, order);
    expect(theirs?.sensors[0]?.rows[0]?.cells[0]?.label).toBe(`Measured by ${provider}`);
  });

  it("is corrected by a later record with its reason, which a second person accepts as well", async () => {
    expect(Object.keys((await refusalOf(record({ certificate: "X-78" }))).fields ?? {})).toEqual([
      "correction",
    ]);
    const again = { certificate: "X-78", correction: "They replaced X-77: a slip of the pen" };
    const rejected = await record(again);
    expect(
      (await refusalOf(decide(desk.signatory, rejected.id, { decision: "rejected" }))).fields,
    ).toHaveProperty("reason");
    await decide(desk.signatory, rejected.id, { decision: "rejected", reason: "U is 1.2 there" });
    const { id } = await record(again);
    expect((await portal()).sensors[0]?.external?.certificate).toBe("X-77");
    await decide(desk.signatory, id);
    expect((await portal()).sensors[0]?.external).toMatchObject({
      certificate: "X-78",
      correction: again.correction,
    });
    const { reports } = await providerReportsView(desk.technician, tag);
    expect(reports.map(({ certificate, standing, counts }) => [certificate, standing, counts])).toEqual([
      ["X-77", "rejected", false],
      ["X-77", "accepted", false],
      ["X-78", "rejected", false],
      ["X-78", "accepted", true],
    ]);
  });

  it("leaves with the sensor, named on the delivery note as what it is", async () => {
    const parcel = {
      number: order,
      tags: [tag],
      handedOver: "in-person" as const,
      publicUrl: "http://localhost",
    };
    // It is still there: offered nowhere, refused with the way out.
    const offered = async () => (await orderShipmentsView(desk.frontDesk, order)).sensors[0];
    expect(await offered()).toMatchObject({ handBack: null, away: `with ${provider}` });
    expect((await waitingFor(desk.frontDesk, "hand-back"))?.count).toBe(0);
    expect(await sensorView(desk.frontDesk, tag)).toMatchObject({ handBack: null, mayCollect: false });
    expect((await orderView(desk.frontDesk, order, clock())).next).toMatch(/^1 sensor to come back/);
    const collected = { tag, handedOver: "in-person" as const };
    for (const handing of [
      () => execute(ship, desk.frontDesk, parcel, clock),
      () => execute(collectSensor, desk.frontDesk, collected, clock),
    ])
      expect((await refusalOf(handing())).message).toMatch(
        `${tag} is with ${provider}. Record on its page first`,
      );
    const back = { tags: tag, kind: "from-provider" as const, whom: provider, condition: "as it went" };
    await execute(moveSensors, desk.technician, back, clock);
    expect(await offered()).toMatchObject({ handBack: "certified", away: "" });
    expect((await waitingFor(desk.frontDesk, "hand-back"))?.count).toBe(1);
    expect((await orderPartsView(desk.frontDesk, order))[0]?.sensors[0]?.next).toMatch(/: send it back\.$/);
    await execute(ship, desk.frontDesk, parcel, clock);
    const note = await laboratory((tx) =>
      tx.orderDocument.findFirstOrThrow({ where: { kind: "delivery-note" } }),
    );
    expect(note.content).toContain(`X-78 by ${provider}`);
    // Collected, and certified as it was.
    expect(await portal()).toMatchObject({
      certified: 1,
      sensors: [{ state: "collected", where: "Handed back" }],
    });
  });
});
