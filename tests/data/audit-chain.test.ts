import type pg from "pg";
import { afterAll, beforeAll, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { appendAuditEvents } from "@/lib/data/audit/append";
import { readAuditEvents } from "@/lib/data/audit/read-events";
import { verifyChain } from "@/lib/data/audit/verify-chain";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { nextNumber } from "@/lib/data/number/next-number";
import { type TestDatabase, testDatabase } from "@/tests/support/database";

const laboratory = { kind: "laboratory" } as const;

let database: TestDatabase;

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
});

afterAll(async () => {
  await closeDatabase();
  await database?.drop();
});

const happened = (entityId: string, payload: unknown = {}) => ({
  action: "thing.made",
  entityKind: "thing",
  entityId,
  payload,
});

const appendOneByOne = async (client: pg.Client, worker: number, times: number): Promise<void> => {
  for (let turn = 0; turn < times; turn += 1) {
    await client.query("BEGIN");
    await client.query("SELECT set_config('app.scope', 'laboratory', true)");
    await client.query("SELECT audit_append($1, 'thing.made', 'thing', $2, '{}')", [`w${worker}`, `${turn}`]);
    // Some transactions fail after they have appended: that may leave no gap.
    await client.query(turn % 9 === 8 ? "ROLLBACK" : "COMMIT");
  }
};

it("is whole when it is empty", async () => {
  expect(await verifyChain()).toMatchObject({ kind: "whole", events: 0 });
});

it("neither forks nor skips under eight writers at once", async () => {
  const clients = await Promise.all(Array.from({ length: 8 }, () => connect(database.runtimeUrl)));
  await Promise.all(clients.map((client, worker) => appendOneByOne(client, worker, 225)));
  await Promise.all(clients.map((client) => client.end()));
  const admin = await connect(database.adminUrl);
  const { rows } = await admin.query(
    `SELECT count(*)::int AS events, count(DISTINCT previous_hash)::int AS predecessors, max(sequence)::int AS last,
            bool_and(at_microseconds >= before) AS ascending
       FROM (SELECT *, lag(at_microseconds, 1, 0) OVER (ORDER BY sequence) AS before FROM audit_event) AS chain`,
  );
  await admin.end();
  expect(rows[0]).toEqual({ events: 1600, predecessors: 1600, last: 1600, ascending: true });
  expect(await verifyChain({ pageSize: 300 })).toMatchObject({ kind: "whole", events: 1600 });
});

it("stores the canonical text and the database's own microseconds", async () => {
  const before = BigInt(Date.now()) * 1000n;
  await inScope(laboratory, (tx) =>
    appendAuditEvents(tx, "system:test", [
      happened("canonical", { z: 1e2, a: { d: "é", b: 1.1 } }),
      happened("2"),
    ]),
  );
  const { events } = await inScope(laboratory, (tx) =>
    readAuditEvents(tx, { entityKind: "thing", entityId: "canonical" }, { limit: 10 }),
  );
  expect(events.map((event) => event.payload)).toEqual(['{"a":{"b":1.1,"d":"é"},"z":100}']);
  expect(events[0]!.atMicroseconds).toBeGreaterThanOrEqual(before);
  expect(events[0]!.atMicroseconds).toBeLessThan(before + 10_000_000n);
  expect(await verifyChain()).toMatchObject({ kind: "whole", events: 1602 });
});

it("is read in pages, newest first, without repeats while others append", async () => {
  const read: bigint[] = [];
  let before: bigint | null = null;
  do {
    const page = await inScope(laboratory, (tx) =>
      readAuditEvents(tx, { actorId: "w3" }, { before, limit: 77 }),
    );
    read.push(...page.events.map((event) => event.sequence));
    before = page.next;
    await inScope(laboratory, (tx) => appendAuditEvents(tx, "w3", [happened("meanwhile")]));
  } while (before !== null);
  expect(read).toHaveLength(200);
  expect(read).toEqual([...new Set(read)].toSorted((a, b) => (a < b ? 1 : -1)));
});

it("gives numbers without gap or repeat to fifty at once, although some fail", async () => {
  const taken = await Promise.allSettled(
    Array.from({ length: 50 }, (_, index) =>
      inScope(laboratory, async (tx) => {
        const number = await nextNumber(tx, "certificate-2026");
        if (index % 5 === 4) throw new Error("the render failed");
        return number;
      }),
    ),
  );
  const numbers = taken.filter((one) => one.status === "fulfilled").map((one) => one.value);
  expect(numbers.toSorted((a, b) => a - b)).toEqual(Array.from({ length: 40 }, (_, index) => index + 1));
  expect(await inScope(laboratory, (tx) => nextNumber(tx, "certificate-2026"))).toBe(41);
  expect(await inScope(laboratory, (tx) => nextNumber(tx, "order"))).toBe(1);
});
