import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { Refused } from "@/lib/domain/refusal";
import { portalOrdersView, portalOrderView } from "@/lib/views/portal-orders";
import { buildRun } from "../support/build-run";
import { buildWorld, type World } from "../support/build-world";
import { type TestDatabase, testDatabase } from "../support/database";
import { signRun } from "../support/sign-run";

let database: TestDatabase;
let world: World;

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

it("shows a customer their own orders, how far they are, and their certificates; another's are not there", async () => {
  const built = await buildRun(world, { owners: ["north", "north", "south"] });
  const [north, south] = built.orders;
  const before = await portalOrderView(world.people.north, north!.number);
  expect(before.progress.steps.map(({ state }) => state)).toEqual(["done", "done", "done", "now", "next"]);
  expect(before.sensors.map(({ where }) => where)).toEqual([
    "Results being checked by a second person",
    "Results being checked by a second person",
  ]);
  const signed = await signRun(world.people.signatory, built);
  const after = await portalOrderView(world.people.north, north!.number);
  expect(after).toMatchObject({ certified: 2, isOpen: false });
  expect(after.sensors.flatMap(({ certificates }) => certificates.map(({ number }) => number))).toEqual(
    signed.slice(0, 2).map(({ number }) => number),
  );
  expect((await portalOrdersView(world.people.north)).orders.map(({ number }) => number)).toEqual([
    north!.number,
  ]);
  const foreign = await portalOrderView(world.people.north, south!.number).catch((error: Refused) => error);
  const unknown = await portalOrderView(world.people.north, "O-none").catch((error: Refused) => error);
  expect(foreign).toBeInstanceOf(Refused);
  expect((foreign as Refused).refusal).toEqual((unknown as Refused).refusal);
  await expect(portalOrdersView(world.people.signatory)).rejects.toMatchObject({
    refusal: { code: "not-permitted" },
  });
});
