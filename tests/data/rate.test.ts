import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { withinRate } from "@/lib/data/rate/within-rate";
import { type TestDatabase, testDatabase } from "@/tests/support/database";

let database: TestDatabase;

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
});

afterAll(async () => {
  await closeDatabase();
  await database?.drop();
});

const at = (text: string): Date => new Date(`2026-03-02T${text}Z`);

it("lets through exactly the limit of those who come at once, and says when it may go on", async () => {
  const rates = await Promise.all(Array.from({ length: 30 }, () => withinRate("a", 20, 60, at("10:00:15"))));
  expect(rates.filter(({ isWithin }) => isWithin)).toHaveLength(20);
  expect(new Set(rates.map(({ resetsInSeconds }) => resetsInSeconds))).toEqual(new Set([45]));
  expect(rates.map(({ remaining }) => remaining).toSorted((a, b) => b - a)[0]).toBe(19);
});

it("counts each key and each window by itself", async () => {
  expect((await withinRate("b", 20, 60, at("10:00:20"))).remaining).toBe(19);
  expect(await withinRate("a", 20, 60, at("10:00:59"))).toMatchObject({
    isWithin: false,
    resetsInSeconds: 1,
  });
  expect(await withinRate("a", 20, 60, at("10:01:00"))).toMatchObject({ isWithin: true, remaining: 19 });
});

it("sweeps the windows of before yesterday", async () => {
  await withinRate("c", 1, 60, new Date("2026-03-05T10:00:00Z"));
  const kept = await inScope({ kind: "laboratory" }, (tx) => tx.rateCount.findMany());
  expect(kept.map(({ key }) => key)).toEqual(["c"]);
});
