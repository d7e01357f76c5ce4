import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { resultColumns } from "@/lib/domain/history/results-table";
import { downloadBatches } from "@/lib/operations/certificate/download-batches";
import { execute } from "@/lib/operations/execute";
import { setInterval as setRecallInterval } from "@/lib/operations/portal/set-interval";
import { portalOffersView } from "@/lib/views/agreement/portal-offers";
import { customerPartsView } from "@/lib/views/order/parts";
import { portalAddressesView } from "@/lib/views/portal/addresses";
import { portalCertificateSetView } from "@/lib/views/portal/certificate-set";
import { portalCertificateSumView } from "@/lib/views/portal/certificate-sum";
import { portalColleaguesView } from "@/lib/views/portal/colleagues";
import { portalComplaintsView } from "@/lib/views/portal/complaints";
import { requestFormView } from "@/lib/views/portal/request-form";
import { portalResults } from "@/lib/views/portal/results";
import { portalSensorHistoryView } from "@/lib/views/portal/sensor-history";
import { portalSensorsView } from "@/lib/views/portal/sensors";
import { portalWaitingView } from "@/lib/views/portal/waiting";
import { portalOrderView } from "@/lib/views/portal-orders";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { codeOf } from "../../support/code-of";
import { type TestDatabase, testDatabase } from "../../support/database";
import { issueAllNow } from "../../support/issue-now";
import { signClock, signRun } from "../../support/sign-run";

let database: TestDatabase;
let world: World;
let built: Awaited<ReturnType<typeof buildRun>>;
beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  built = await buildRun(world, { owners: ["north", "north", "south"] });
  await signRun(world.people.signatory, built);
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const serialsOf = (customerId: string) =>
  inScope({ kind: "laboratory" }, async (tx) =>
    (await tx.sensor.findMany({ where: { customerId }, orderBy: { serial: "asc" } })).map(
      ({ serial }) => serial,
    ),
  );
const all = async (rows: ReturnType<typeof portalResults>) => {
  const found: (readonly string[])[] = [];
  for await (const batch of rows) found.push(...batch);
  return found;
};
const now = signClock();

describe("another customer's", () => {
  it("numbers are not there, on any page or file of the portal", async () => {
    const { south } = world.people;
    const foreign = built.orders[0]!.number;
    const [serial] = await serialsOf(world.north.id);
    const sweep = {
      order: () => portalOrderView(south, foreign),
      offers: () => portalOffersView(south, foreign, now),
      parts: () => customerPartsView(south, foreign),
      again: () => requestFormView(south, [], foreign),
      zip: () => portalCertificateSetView(south, foreign),
      results: () => all(portalResults(south, foreign)),
      sensor: () => portalSensorHistoryView(south, serial!),
    };
    for (const [page, work] of Object.entries(sweep))
      expect(`${page} ${await codeOf(work())}`).toBe(`${page} not-found`);
    expect(await codeOf(portalOrderView(world.people.north, foreign))).toBe("answered");
  });

  it("rows are in no list", async () => {
    const { south, north } = world.people;
    const text = JSON.stringify([
      await portalSensorsView(south, now),
      await portalCertificateSetView(south, null),
      await all(portalResults(south, null)),
      await portalAddressesView(south),
      await portalColleaguesView(south, now),
      await portalComplaintsView(south),
      await portalWaitingView(south, now),
      await requestFormView(south, await serialsOf(world.north.id)),
    ]);
    for (const secret of [
      ...(await serialsOf(world.north.id)),
      built.orders[0]!.number,
      "Nina North",
      world.north.id,
    ])
      expect(text).not.toContain(secret);
    expect(JSON.stringify(await portalSensorsView(north, now))).toContain(
      (await serialsOf(world.north.id))[0],
    );
  });

  it("pages are not for the laboratory's people either", async () => {
    const { signatory } = world.people;
    expect(await codeOf(portalSensorsView(signatory, now))).toBe("not-permitted");
    expect(() => portalColleaguesView(signatory, now)).toThrow("Your roles do not allow");
    expect(await codeOf(all(portalResults(signatory, null)))).toBe("not-permitted");
  });
});

it("shows when each sensor is due by the interval its owner set, and its history", async () => {
  const [serial] = await serialsOf(world.north.id);
  await execute(setRecallInterval, world.people.north, { months: "12" }, signClock);
  const { sensors, forAll } = await portalSensorsView(world.people.north, new Date("2027-02-20T00:00:00Z"));
  expect(forAll).toEqual({ months: 12, noticeDays: 30 });
  expect(sensors.map(({ stage, from }) => `${stage} ${from}`)).toEqual(["due all", "due all"]);
  const history = await portalSensorHistoryView(world.people.north, serial!);
  expect(history.certificates).toHaveLength(1);
  expect(history.series.map(({ nominalCelsius }) => nominalCelsius)).toEqual([600, 1000]);
  expect(history.series[0]!.points[0]).toMatchObject({
    certificate: history.certificates[0]!.number,
    change: null,
  });
});

it("hands out certificates light enough for mail, of a size said before, and each recorded as taken", async () => {
  await issueAllNow();
  const set = await portalCertificateSetView(world.people.north, null);
  expect(set).toHaveLength(2);
  const taken: { name: string; size: number }[] = [];
  for await (const batch of downloadBatches(
    world.people.north,
    set.map(({ token }) => token),
    signClock,
  ))
    taken.push(...batch.map(({ number, bytes }) => ({ name: `${number}.pdf`, size: bytes.length })));
  for (const person of [world.people.north, world.people.south]) {
    const own = await portalCertificateSetView(person, null);
    const size = own.reduce((sum, one) => sum + (one.size ?? 0), 0);
    expect(await portalCertificateSumView(person)).toEqual({ count: own.length, size });
  }
  for (const { size } of taken) expect(size).toBeLessThan(300_000);
  expect(taken.map(({ size }) => size)).toEqual(set.map(({ size }) => size));
  const events = await inScope({ kind: "laboratory" }, (tx) =>
    tx.auditEvent.count({ where: { action: "certificate.downloaded" } }),
  );
  expect(events).toBe(2);
});

it("makes a table of the results, one row each", async () => {
  const rows = await all(portalResults(world.people.north, built.orders[0]!.number));
  expect(rows).toHaveLength(4);
  for (const row of rows) expect(row).toHaveLength(resultColumns.length);
  expect(new Set(rows.map((row) => row[resultColumns.indexOf("setpoint")]))).toEqual(
    new Set(["600", "1000"]),
  );
});
