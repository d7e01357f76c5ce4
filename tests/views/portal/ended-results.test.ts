import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { EndedNote } from "@/app/_ui/ended-note";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import type { Corrections } from "@/lib/domain/amendment/amendment";
import { resultColumns } from "@/lib/domain/history/results-table";
import { askAmendment } from "@/lib/operations/certificate/ask-amendment";
import { signOffAmendment } from "@/lib/operations/certificate/sign-off-amendment";
import { withdrawCertificate } from "@/lib/operations/certificate/withdraw";
import { execute } from "@/lib/operations/execute";
import { setInterval as setRecallInterval } from "@/lib/operations/portal/set-interval";
import { orderView } from "@/lib/views/order/order";
import { requestFormView } from "@/lib/views/portal/request-form";
import { portalResultsFile } from "@/lib/views/portal/results-file";
import { portalSensorHistoryView } from "@/lib/views/portal/sensor-history";
import { portalSensorsView } from "@/lib/views/portal/sensors";
import { portalOrderView } from "@/lib/views/portal-orders";
import { sensorView } from "@/lib/views/sensor/sensor";
import { orderShipmentsView } from "@/lib/views/shipment/order-shipments";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { codeOf } from "../../support/code-of";
import { type TestDatabase, testDatabase } from "../../support/database";
import { issueAllNow } from "../../support/issue-now";
import { amendedHash, signClock, signingAct, signRun } from "../../support/sign-run";

/** Of three certificates one stands, one was amended, one was withdrawn: what a customer still sees as a result. */

const laboratory = { kind: "laboratory" } as const;
let database: TestDatabase;
let world: World;
let serials: readonly string[];
let order: string;
let standing: string;
let amended: string;
let amendment: string;
let withdrawn: string;
let standingId: string;

const amend = async (certificateId: string, corrections: Corrections): Promise<string> => {
  const asked = { certificateId, kind: "amendment" as const, reason: "it was misread (invented)" };
  const { id } = await execute(askAmendment, world.people.quality, { ...asked, corrections }, signClock);
  const reviewedHash = await amendedHash(id);
  const act = { amendmentId: id, reviewedHash, act: signingAct() };
  return (await execute(signOffAmendment, world.people.signatory, act, signClock)).number;
};

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  const built = await buildRun(world, { owners: ["north", "north", "north"] });
  serials = built.sensors.map(({ serial }) => serial);
  order = built.orders[0]!.number;
  const signed = await signRun(world.people.signatory, built);
  await issueAllNow();
  [standing, amended, withdrawn] = signed.map(({ number }) => number) as [string, string, string];
  standingId = signed[0]!.id;
  amendment = await amend(signed[1]!.id, { purchaseOrder: "PO-CORRECTED" });
  const reason = "Another sensor was measured (invented).";
  const ended = { certificateId: signed[2]!.id, reason, forGood: true as const };
  await execute(withdrawCertificate, world.people.quality, ended, signClock);
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const fileOf = async (ofOrder: string | null): Promise<string> => {
  let text = "";
  for await (const piece of await portalResultsFile(world.people.north, ofOrder))
    text += new TextDecoder().decode(piece);
  return text;
};

describe("a result that stands no longer", () => {
  it.each(["one order", "all orders"])("is not in the file of %s; what took its place is", async (which) => {
    const text = await fileOf(which === "one order" ? order : null);
    const [head, ...rows] = text.replace("\uFEFF", "").trim().split("\r\n");
    expect(head).toBe(resultColumns.join(","));
    expect(rows).toHaveLength(4);
    expect(new Set(rows.map((row) => row.split(",")[0]))).toEqual(new Set([standing, amendment]));
    for (const gone of [amended, withdrawn, serials[2]!]) expect(text).not.toContain(gone);
    expect(text).toContain("PO-CORRECTED");
  });

  it("is not drawn in the history of its sensor, whose certificates say what became of them", async () => {
    const seen = [];
    for (const serial of serials) {
      const { certificates, series } = await portalSensorHistoryView(world.people.north, serial);
      const drawn = new Set(series.flatMap(({ points }) => points.map(({ certificate }) => certificate)));
      seen.push([certificates.map((one) => `${one.number} ${one.standing.kind}`), [...drawn]]);
    }
    expect(seen).toEqual([
      [[`${standing} valid`], [standing]],
      [[`${amended} amended`, `${amendment} pending`], [amendment]],
      [[`${withdrawn} withdrawn`], []],
    ]);
  });

  it("is neither ready nor missing on the page of its sensor", async () => {
    const said = [];
    for (const serial of serials) {
      const { noResult, where } = await portalSensorHistoryView(world.people.north, serial);
      said.push([where, noResult]);
    }
    expect(said).toEqual([
      ["Certificate ready", "No result yet."],
      ["Certificate ready", "No result yet."],
      ["Certificate withdrawn", "Its only result is withdrawn."],
    ]);
  });

  it("goes back only once that is agreed with the customer", async () => {
    const shown = await orderShipmentsView(world.people.desk, order);
    expect(shown.sensors.map(({ isWithdrawn }) => isWithdrawn)).toEqual([false, false, true]);
    expect((await orderView(world.people.desk, order, signClock())).next).toContain(
      "The certificate of 1 of them is withdrawn",
    );
    const [, , last] = shown.sensors;
    expect((await sensorView(world.people.desk, last?.tag ?? "")).next).toContain("withdrawn");
  });

  it("is no calibration that the next one is counted from", async () => {
    await execute(setRecallInterval, world.people.north, { months: "12" }, signClock);
    const { sensors } = await portalSensorsView(world.people.north, new Date("2026-06-01T00:00:00Z"));
    expect(sensors.map((one) => [one.serial, one.certificate, one.stage, one.dueOn])).toEqual([
      [serials[2], withdrawn, "withdrawn", null],
      [serials[0], standing, "later", "2027-03-02"],
      [serials[1], amendment, "later", "2027-03-02"],
    ]);
  });

  it("is marked on the page of its order", async () => {
    const { counts, sensors } = await portalOrderView(world.people.north, order);
    // What was withdrawn is not ready, and counts for nothing; what was amended is still certified.
    expect(sensors.map(({ where }) => where)).toEqual([
      ...["Certificate ready", "Certificate ready", "Certificate withdrawn"],
    ]);
    expect(counts).toContain("3 have come, 2 certified");
    const said = sensors.flatMap(({ certificates }) =>
      certificates.map((one) => `${one.number} ${one.standing.kind}`),
    );
    expect(said.sort()).toEqual(
      [`${standing} valid`, `${amended} amended`, `${amendment} pending`, `${withdrawn} withdrawn`].sort(),
    );
  });
});

describe("a sensor whose certificate was corrected to another serial", () => {
  const corrected = "N-CORRECTED";
  let successor: string;
  beforeAll(async () => {
    const asItWas = { serial: serials[0]!, months: "9" };
    await execute(setRecallInterval, world.people.north, asItWas, () => new Date("2026-03-05T09:00:00Z"));
    successor = await amend(standingId, { serial: corrected });
  });

  it("shows its results by either serial, and leads from each to the other", async () => {
    const [before] = serials as [string];
    for (const asked of [before, corrected]) {
      const seen = await portalSensorHistoryView(world.people.north, asked);
      expect(seen.series.map(({ points }) => points.map(({ certificate }) => certificate))).toEqual([
        [successor],
        [successor],
      ]);
      expect(seen.certificates.map((one) => [one.number, one.names, one.standing.kind])).toEqual([
        [standing, before, "amended"],
        [successor, corrected, "pending"],
      ]);
      expect(seen).toMatchObject({
        name: corrected,
        nowCalled: asked === before ? [corrected] : [],
        takenInAs: asked === before ? [] : [before],
      });
    }
    const { token } = await inScope(laboratory, (tx) =>
      tx.certificate.findUniqueOrThrow({ where: { number: successor } }),
    );
    const [ended] = (await portalSensorHistoryView(world.people.north, corrected)).certificates;
    expect(renderToStaticMarkup(EndedNote({ number: standing, standing: ended!.standing }))).toContain(
      `use <a href="/authenticity/${token}">${successor}</a>.`,
    );
  });

  it("is listed, and asked for again, by its serial of today", async () => {
    const { sensors } = await portalSensorsView(world.people.north, new Date("2026-06-01T00:00:00Z"));
    expect(sensors.map(({ serial, certificate, stands }) => [serial, certificate, stands])).toEqual([
      [serials[2], withdrawn, false],
      [corrected, successor, true],
      [serials[1], amendment, true],
    ]);
    expect((await requestFormView(world.people.north, [corrected])).wishes).toContain(corrected);
    // What was said of it under its earlier serial holds, until something is said under this one.
    expect((await portalSensorHistoryView(world.people.north, corrected)).interval).toMatchObject({
      ...{ months: 9, from: "own" },
    });
    expect(sensors.find(({ serial }) => serial === corrected)).toMatchObject({
      months: 9,
      dueOn: "2026-12-02",
    });
    await execute(setRecallInterval, world.people.north, { serial: corrected, months: "6" }, signClock);
    expect((await portalSensorHistoryView(world.people.north, corrected)).interval).toMatchObject({
      ...{ months: 6, from: "own" },
    });
  });

  it("is not there for somebody else", async () => {
    expect(await codeOf(portalSensorHistoryView(world.people.south, corrected))).toBe("not-found");
    expect((await requestFormView(world.people.south, [corrected])).kinds).toEqual([]);
  });
});
