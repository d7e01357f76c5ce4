import { afterAll, beforeAll, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase, database as prisma } from "@/lib/data/client";
import { inScope, inSnapshot } from "@/lib/data/in-scope";
import type { Scope } from "@/lib/domain/staff/actor";
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

const seenIn = (scope: Scope, pause: number): Promise<string> =>
  inScope(scope, async (tx) => {
    const before = await tx.order.findMany({ orderBy: { number: "asc" } });
    // Others begin and end meanwhile on the same few connections.
    if (pause > 0) await tx.$executeRaw`SELECT pg_sleep(${pause / 1000}::float8)`;
    const after = await tx.sensor.findMany({ orderBy: { tag: "asc" } });
    return [...before.map((order) => order.number), ...after.map((sensor) => sensor.tag)].join(" ");
  });

it("shows each of 400 interleaved transactions its own and nothing else", async () => {
  const kinds: readonly { scope: Scope; sees: string }[] = [
    { scope: { kind: "customer", customerId: world.a.customerId }, sees: "O-alpha T-alpha" },
    { scope: { kind: "customer", customerId: world.b.customerId }, sees: "O-beta T-beta" },
    { scope: { kind: "laboratory" }, sees: "O-alpha O-beta T-alpha T-beta" },
  ];
  const asked = Array.from({ length: 400 }, (_, index) => ({ ...kinds[(index * 7) % 3]!, pause: index % 4 }));
  const answers = await Promise.all(
    asked.map(async ({ scope, sees, pause }) => ({ sees, saw: await seenIn(scope, pause) })),
  );
  expect(answers.filter(({ sees, saw }) => sees !== saw)).toEqual([]);
  expect(new Set(answers.map(({ saw }) => saw)).size).toBe(3);
});

it("leaves no scope behind on any connection of the pool", async () => {
  const bare = await Promise.all(Array.from({ length: 40 }, () => prisma().order.count()));
  expect(bare).toEqual(Array.from({ length: 40 }, () => 0));
});

it("leaves no scope behind after a transaction that failed", async () => {
  const scope = { kind: "laboratory" } as const;
  const failures = await Promise.allSettled(
    Array.from({ length: 20 }, () => inScope(scope, (tx) => tx.$executeRaw`SELECT 1 / 0`)),
  );
  expect(failures.every((failure) => failure.status === "rejected")).toBe(true);
  expect(await Promise.all(Array.from({ length: 20 }, () => prisma().order.count()))).toEqual(
    Array.from({ length: 20 }, () => 0),
  );
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
