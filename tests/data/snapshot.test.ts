import { afterAll, beforeAll, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope, inSnapshot } from "@/lib/data/in-scope";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { type TwoCustomers, twoCustomers } from "./two-customers";

let database: TestDatabase;
let world: TwoCustomers;

beforeAll(async () => {
  database = await testDatabase();
  const admin = await connect(database.adminUrl);
  world = await twoCustomers(admin).finally(() => admin.end());
  configureDatabase(database.runtimeUrl);
});

afterAll(async () => {
  await closeDatabase();
  await database?.drop();
});

const rename = (name: string): Promise<unknown> =>
  inScope({ kind: "laboratory" }, (tx) =>
    tx.customer.update({ where: { id: world.a.customerId }, data: { name } }),
  );

/** The name before and after somebody else changed it, as one transaction sees it. */
const seenAround = (read: typeof inScope, name: string): Promise<readonly string[]> =>
  read({ kind: "laboratory" }, async (tx) => {
    const nameNow = async () =>
      (await tx.customer.findUniqueOrThrow({ where: { id: world.a.customerId }, select: { name: true } }))
        .name;
    const before = await nameNow();
    await rename(name);
    return [before, await nameNow()];
  });

it("shows a page all of one moment, whatever is committed between its questions", async () => {
  await rename("Before");
  expect(await seenAround(inScope, "Between")).toEqual(["Before", "Between"]);
  expect(await seenAround(inSnapshot, "After")).toEqual(["Between", "Between"]);
});
