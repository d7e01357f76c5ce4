import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { loadEarlier } from "@/lib/data/review/load-earlier";
import { loadExceptions } from "@/lib/data/review/load-exceptions";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { askAmendment } from "@/lib/operations/certificate/ask-amendment";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { signOffAmendment } from "@/lib/operations/certificate/sign-off-amendment";
import { execute } from "@/lib/operations/execute";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { issueAllNow } from "../../support/issue-now";
import { openResults } from "../../support/open-results";
import { amendedHash, signClock, signingAct, signOffInput, signRun } from "../../support/sign-run";

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

const load = (runId: string) =>
  inScope(laboratory, async (tx) => {
    const review = (await loadReviewRun(tx, runId))!;
    return { earlier: await loadEarlier(tx, review), exceptions: await loadExceptions(tx, review) };
  });
const a600 = [{ typed: "600", celsius: 600 }];
const laterThatYear = new Date("2026-06-02T08:00:00Z");

it("finds the last standing certificate by serial and customer, under whichever label, and nobody else's", async () => {
  const first = await buildRun(world, { owners: ["north", "south"] });
  await openResults(world.people.signatory, first.run.id);
  const certificates = await signRun(world.people.signatory, first);
  const again = await buildRun(world, {
    owners: ["north", "south"],
    createdAt: laterThatYear,
    setpoints: [...a600, { typed: "800", celsius: 800 }],
    change: (point, index) =>
      point.state === "measured" && index === 0 && point.nominalCelsius === 600
        ? { ...point, errorCelsius: point.errorCelsius + 3 }
        : point,
  });
  // The first sensor comes again with a new label; the second has the serial of the other customer's first.
  const [north, south] = first.sensors;
  await inScope(laboratory, async (tx) => {
    await tx.sensor.update({ where: { id: again.sensors[0]!.id }, data: { serial: north!.serial } });
    await tx.sensor.update({ where: { id: again.sensors[1]!.id }, data: { serial: north!.serial } });
  });
  const { earlier, exceptions } = await load(again.run.id);
  // Only the setpoint that was measured then.
  expect(earlier).toEqual([
    {
      sensor: again.sensors[0]!.tag,
      setpoint: expect.any(String),
      errorCelsius: 0.5,
      expandedCelsius: 1.3,
      coverageFactor: 2,
      certificate: certificates.find(({ sensorId }) => sensorId === north!.id)!.number,
      performedTo: expect.stringMatching(/^\d{4}-\d{2}-\d{2}$/),
    },
  ]);
  expect(exceptions.find(({ kind }) => kind === "earlier")).toMatchObject({
    subject: `${again.sensors[0]!.tag} at 600 °C`,
    text: "differs from its last calibration by +3.00 °C, 1.7 times the U of the difference",
  });
  expect(south!.customerId).not.toBe(north!.customerId);
  // The first run has nothing before it, and is not compared with what came after.
  expect((await load(first.run.id)).earlier).toEqual([]);
});

it("passes over a certificate that no longer stands", async () => {
  const first = await buildRun(world, { owners: ["north"], setpoints: a600 });
  await openResults(world.people.signatory, first.run.id);
  const [signed] = await signRun(world.people.signatory, first);
  const again = await buildRun(world, { owners: ["north"], setpoints: a600, createdAt: laterThatYear });
  await inScope(laboratory, (tx) =>
    tx.sensor.update({ where: { id: again.sensors[0]!.id }, data: { serial: first.sensors[0]!.serial } }),
  );
  expect((await load(again.run.id)).earlier).toMatchObject([{ certificate: signed!.number }]);
  await inScope(laboratory, (tx) =>
    tx.certificateEnding.create({
      data: {
        certificateId: signed!.id,
        customerId: first.sensors[0]!.customerId,
        kind: "withdrawn",
        reason: "measured in the wrong place",
        decidedById: world.people.signatory.personId,
        decidedAt: new Date("2026-04-01T08:00:00Z"),
      },
    }),
  );
  expect((await load(again.run.id)).earlier).toEqual([]);
});

it("knows a sensor by the serial that its certificate was corrected to, also where that came after the run began", async () => {
  const first = await buildRun(world, { owners: ["north"], setpoints: a600 });
  // Signed, the next run begun, and then corrected.
  const at = (time: string) => new Date(`2026-03-05T${time}Z`);
  const input = await signOffInput(first);
  const signing = await execute(signOff, world.people.signatory, input, () => at("09:59:30"));
  await issueAllNow();
  const createdAt = at("09:59:45");
  const again = await buildRun(world, { owners: ["north"], setpoints: a600, createdAt });
  const readRight = "N-READ-RIGHT";
  await inScope(laboratory, (tx) =>
    tx.sensor.update({ where: { id: again.sensors[0]!.id }, data: { serial: readRight } }),
  );
  expect((await load(again.run.id)).earlier).toEqual([]);
  const certificateId = signing.certificates[0]!.id;
  const asked = { certificateId, kind: "amendment" as const, reason: "its serial was misread" };
  const { id: amendmentId } = await execute(
    askAmendment,
    world.people.quality,
    { ...asked, corrections: { serial: readRight } },
    signClock,
  );
  const { number } = await execute(
    signOffAmendment,
    world.people.signatory,
    { amendmentId, reviewedHash: await amendedHash(amendmentId), act: signingAct() },
    signClock,
  );
  expect((await load(again.run.id)).earlier).toMatchObject([{ certificate: number }]);
  // A sensor that bears the serial which was misread is another one.
  await inScope(laboratory, (tx) =>
    tx.sensor.update({ where: { id: again.sensors[0]!.id }, data: { serial: first.sensors[0]!.serial } }),
  );
  expect((await load(again.run.id)).earlier).toEqual([]);
});
