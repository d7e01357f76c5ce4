import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { certificatePage } from "@/lib/data/sql/certificate-page";
import { sensorPage } from "@/lib/data/sql/sensor-page";
import { askAmendment } from "@/lib/operations/certificate/ask-amendment";
import { signOffAmendment } from "@/lib/operations/certificate/sign-off-amendment";
import { execute } from "@/lib/operations/execute";
import { certificateListView } from "@/lib/views/certificate-list";
import { searchView } from "@/lib/views/search";
import { sensorsView } from "@/lib/views/sensor/sensors";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { issueAllNow } from "../../support/issue-now";
import { amendedHash, signClock, signingAct, signRun } from "../../support/sign-run";

let database: TestDatabase;
let world: World;

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
});
afterAll(async () => {
  await closeDatabase();
  await database?.drop();
});

const today = "2026-03-06";
const serial = "OB-2219/X";

/** Gathered first, and the list read in its own order, which must say the same. */
const pages = (q: string) =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const certificates = await certificatePage(tx, { q }, { kind: "first" });
    expect(await certificatePage(tx, { q }, { kind: "first" }, 0), q).toEqual(certificates);
    const asked = { query: { show: "all", find: q }, today } as const;
    const sensors = await sensorPage(tx, asked, { kind: "first" });
    expect(await sensorPage(tx, asked, { kind: "first" }, 0), q).toEqual(sensors);
    return {
      certificates: certificates.map(({ name }) => name),
      sensors: sensors.rows.map(({ name }) => name),
    };
  });

it("a corrected serial finds the sensor and its certificates once the correction is signed, as the old one does", async () => {
  const { desk, quality, signatory } = world.people;
  const built = await buildRun(world, { owners: ["north", "north"] });
  const [old, other] = await signRun(signatory, built);
  await issueAllNow();
  const tag = built.sensors[0]!.tag;
  const asked = {
    certificateId: old!.id,
    kind: "amendment" as const,
    reason: "Misread at intake (invented).",
  };
  const { id } = await execute(askAmendment, quality, { ...asked, corrections: { serial } }, signClock);
  // Asked for is not said yet.
  expect(await pages(serial)).toEqual({ certificates: [], sensors: [] });
  expect(await searchView(desk, serial)).toEqual([]);

  const act = { amendmentId: id, reviewedHash: await amendedHash(id), act: signingAct() };
  const { number } = await execute(signOffAmendment, signatory, act, signClock);
  await issueAllNow();
  const both = [number, old!.number].toSorted();
  const words = [serial, "ob2219x", "2219", "/X", "ob", built.sensors[0]!.serial];
  for (const q of words) {
    const { certificates, sensors } = await pages(q);
    expect(certificates.toSorted(), q).toEqual(expect.arrayContaining(both));
    expect(sensors, q).toContain(tag);
    if (q !== built.sensors[0]!.serial) expect(certificates, q).not.toContain(other!.number);
  }
  // Of one or two characters not the middle; of dashes alone nothing.
  for (const q of ["22", "--"]) expect(await pages(q), q).toEqual({ certificates: [], sensors: [] });

  const listed = (await certificateListView(desk, { q: serial })).certificates;
  expect(listed.map((line) => line.serial).toSorted()).toEqual([built.sensors[0]!.serial, serial].toSorted());
  const sensors = await sensorsView(desk, { show: "all", find: "2219" }, today);
  expect(sensors.sensors).toMatchObject([{ tag, serial: built.sensors[0]!.serial, certifiedAs: [serial] }]);
  const uncorrected = await sensorsView(desk, { show: "all", find: built.sensors[1]!.tag }, today);
  expect(uncorrected.sensors).toMatchObject([{ certifiedAs: [] }]);
  const detail = expect.stringContaining(`certified as ${serial}`);
  expect(await searchView(desk, "ob 2219 x")).toMatchObject([
    { kind: "sensor", hits: [{ key: tag, detail, isExact: true }] },
  ]);
  const [group] = await searchView(desk, "2219");
  expect(group?.hits).toMatchObject([{ key: tag, detail, isExact: false }]);
});
