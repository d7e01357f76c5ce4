import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { configurePublicUrl } from "@/lib/data/public-url";
import { execute } from "@/lib/operations/execute";
import { setInterval as setRecallInterval } from "@/lib/operations/portal/set-interval";
import { remindOfRecall } from "@/lib/operations/reminder/remind-of-recall";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { signClock, signRun } from "../../support/sign-run";

let database: TestDatabase;
let world: World;
beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  await signRun(world.people.signatory, await buildRun(world, { owners: ["north", "north", "south"] }));
  configurePublicUrl("https://lab.example.org/");
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const at = (day: string) => () => new Date(`${day}T06:00:00Z`);
const mails = () =>
  inScope({ kind: "laboratory" }, (tx) => tx.mailMessage.findMany({ where: { kind: "recall-due" } }));
const serials = () =>
  inScope({ kind: "laboratory" }, async (tx) =>
    (await tx.sensor.findMany({ where: { customerId: world.north.id }, orderBy: { serial: "asc" } })).map(
      ({ serial }) => serial,
    ),
  );

it("reminds a customer by letter, once for each serial and day, and says nothing confidential in it", async () => {
  expect(await remindOfRecall(at("2027-03-01"))).toEqual({ customers: 0, sensors: 0 });
  await execute(setRecallInterval, world.people.north, { months: "12", noticeDays: "30" }, signClock);
  expect(await remindOfRecall(at("2027-01-02"))).toEqual({ customers: 0, sensors: 0 });
  expect(await remindOfRecall(at("2027-02-27"))).toEqual({ customers: 1, sensors: 2 });
  expect(await remindOfRecall(at("2027-02-28"))).toEqual({ customers: 0, sensors: 0 });
  const [mail, ...others] = await mails();
  expect(others).toEqual([]);
  expect(mail).toMatchObject({
    recipient: "nina.north@example.test",
    subject: "2 sensors of yours come due for calibration",
  });
  expect(mail!.body).toContain("https://lab.example.org/portal/sensors");
  for (const serial of await serials()) expect(mail!.body + mail!.subject).not.toContain(serial);
});

it("tells again of another day, and no longer of what is not wanted", async () => {
  const [first, second] = await serials();
  await execute(setRecallInterval, world.people.north, { serial: first!, months: "6" }, signClock);
  await execute(setRecallInterval, world.people.north, { serial: second!, months: "" }, signClock);
  expect(await remindOfRecall(at("2027-03-03"))).toEqual({ customers: 1, sensors: 1 });
  expect(await mails()).toHaveLength(2);
});

it("knows no sensor of another customer", async () => {
  const [first] = await serials();
  await expect(
    execute(setRecallInterval, world.people.south, { serial: first!, months: "6" }, signClock),
  ).rejects.toMatchObject({ refusal: { code: "invalid" } });
});
