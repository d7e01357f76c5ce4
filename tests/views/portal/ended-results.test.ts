import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadAmended } from "@/lib/data/amendment/load-amended";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { resultColumns } from "@/lib/domain/history/results-table";
import { demand } from "@/lib/domain/refusal";
import { askAmendment } from "@/lib/operations/certificate/ask-amendment";
import { signOffAmendment } from "@/lib/operations/certificate/sign-off-amendment";
import { withdrawCertificate } from "@/lib/operations/certificate/withdraw";
import { execute } from "@/lib/operations/execute";
import { setInterval as setRecallInterval } from "@/lib/operations/portal/set-interval";
import { portalResultsFile } from "@/lib/views/portal/results-file";
import { portalSensorHistoryView } from "@/lib/views/portal/sensor-history";
import { portalSensorsView } from "@/lib/views/portal/sensors";
import { portalOrderView } from "@/lib/views/portal-orders";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { issueAllNow } from "../../support/issue-now";
import { signClock, signingAct, signRun } from "../../support/sign-run";

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

const amend = async (certificateId: string): Promise<string> => {
  const asked = { certificateId, kind: "amendment" as const, reason: "the purchase order was misread" };
  const corrections = { purchaseOrder: "PO-CORRECTED" };
  const { id } = await execute(askAmendment, world.people.quality, { ...asked, corrections }, signClock);
  const reviewedHash = await inScope(laboratory, async (tx) => {
    const certificate = await tx.certificate.findUniqueOrThrow({ where: { id: certificateId } });
    const row = await tx.amendment.findUniqueOrThrow({ where: { id } });
    const following = demand(await loadAmended(tx, certificate, row));
    return hex(contentHash(demand(following.compose(null)), sha256));
  });
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
  amendment = await amend(signed[1]!.id);
  const reason = "Another sensor was measured (invented).";
  const ended = { certificateId: signed[2]!.id, reason };
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
    const { sensors } = await portalOrderView(world.people.north, order);
    const said = sensors.flatMap(({ certificates }) =>
      certificates.map((one) => `${one.number} ${one.standing.kind}`),
    );
    expect(said.sort()).toEqual(
      [`${standing} valid`, `${amended} amended`, `${amendment} pending`, `${withdrawn} withdrawn`].sort(),
    );
  });
});
