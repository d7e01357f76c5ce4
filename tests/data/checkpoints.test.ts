import { randomUUID } from "node:crypto";
import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { appendAuditEvents } from "@/lib/data/audit/append";
import { checkpointNow } from "@/lib/data/audit/checkpoint-now";
import { loadCarried } from "@/lib/data/audit/load-carried";
import { verifyChain } from "@/lib/data/audit/verify-chain";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { canonical } from "@/lib/domain/audit/canonical";
import { firstUnheld } from "@/lib/domain/audit/carried-checkpoints";
import type { Checkpoint } from "@/lib/domain/audit/checkpoint";
import { chainVerdictView } from "@/lib/views/audit-log";
import { authenticityView } from "@/lib/views/authenticity";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { cutAfter, rewrittenFrom } from "@/tests/support/rewrite-log";
import { twoCustomers } from "./two-customers";

/** A log rewritten with all its hashes links from end to end. What a certificate took with it tells, inside and outside. */

const laboratory = { kind: "laboratory" } as const;
let database: TestDatabase;
let admin: pg.Client;
let checkpoint: Checkpoint;
let certificate: { number: string; token: string };
let plain: { token: string };

const append = (count: number, note: string) =>
  inScope(laboratory, (tx) =>
    appendAuditEvents(
      tx,
      "system:test",
      Array.from({ length: count }, (_, at) => ({
        ...{ action: "thing.made", entityKind: "thing", entityId: `${at}`, payload: { note } },
      })),
    ),
  );

const kept = ["audit_event", "audit_head"];

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  await twoCustomers(admin);
  configureDatabase(database.runtimeUrl);
  await append(20, "before");
  const { log } = await inScope(laboratory, checkpointNow);
  if (!log) throw new Error("the log is empty");
  checkpoint = log;
  await append(10, "after");
  for (const table of [...kept, "certificate"]) await admin.query(`ALTER TABLE ${table} DISABLE TRIGGER ALL`);
  const { rows } = await admin.query("SELECT number, token FROM certificate ORDER BY number");
  [certificate, plain] = rows;
  // Words of people that look like one are not it.
  const content = canonical({
    customer: `"log":{"hash":"${"0".repeat(64)}","sequence":1}`,
    log,
    number: "x",
  });
  await admin.query("UPDATE certificate SET content = $1 WHERE token = $2", [content, certificate.token]);
  for (const table of kept) await admin.query(`CREATE TABLE kept_${table} AS TABLE ${table}`);
});

afterAll(async () => {
  await closeDatabase();
  await admin?.end();
  await database?.drop();
});

const loggedAt = async (token: string): Promise<string> => {
  const answer = await authenticityView(token, randomUUID(), new Date("2026-05-01T10:00:00Z"));
  if (answer.kind !== "answered") throw new Error("too many");
  return answer.status.logHash;
};

const inside = () => inScope(laboratory, async (tx) => firstUnheld(await loadCarried(tx)));

/** What the audit page shows. */
const shown = () => chainVerdictView({ kind: "system", name: "test" });

const afterwards = async (work: () => Promise<unknown>, look: () => Promise<void>): Promise<void> => {
  try {
    await work();
    await look();
  } finally {
    for (const table of kept)
      await admin.query(`DELETE FROM ${table}; INSERT INTO ${table} TABLE kept_${table}`);
  }
};

describe("a checkpoint of the log", () => {
  it("is the head as committed when it was taken, and holds while the log only grows", async () => {
    const { rows } = await admin.query(
      "SELECT encode(hash, 'hex') AS hash FROM audit_event WHERE sequence = $1",
      [checkpoint.sequence],
    );
    expect(rows).toEqual([{ hash: checkpoint.hash }]);
    expect(await inScope(laboratory, loadCarried)).toEqual([
      { certificate: certificate.number, checkpoint, found: checkpoint.hash },
    ]);
    await afterwards(
      () => append(3, "later"),
      async () => {
        expect(await verifyChain()).toMatchObject({ kind: "whole" });
        expect(await inside()).toBeNull();
        expect(await shown()).toMatchObject({ kind: "whole", certificates: 1 });
        expect(await loggedAt(certificate.token)).toBe(checkpoint.hash);
      },
    );
  });

  it("waits for nobody who is appending", async () => {
    await admin.query("BEGIN; SELECT 1 FROM audit_head FOR UPDATE");
    expect((await inScope(laboratory, checkpointNow)).log?.sequence).toBe(checkpoint.sequence + 10);
    await admin.query("ROLLBACK");
  });

  it.each([
    [
      "rewritten from an event on",
      () => rewrittenFrom(checkpoint.sequence - 5, `payload = '{"note":"other"}'`),
    ],
    ["rewritten in its last event then", () => rewrittenFrom(checkpoint.sequence, "actor_id = 'system:x'")],
    ["rewritten from its first event on", () => rewrittenFrom(1, "at_microseconds = at_microseconds + 1")],
  ])("finds a log %s, where chain and head say nothing", async (_, sql) => {
    await afterwards(
      () => admin.query(sql()),
      async () => {
        expect(await verifyChain()).toMatchObject({ kind: "whole" });
        expect(await inside()).toMatchObject({ kind: "different", sequence: checkpoint.sequence });
        expect(await shown()).toMatchObject({
          kind: "rewritten",
          what: expect.stringContaining("was rewritten"),
        });
        const now = await loggedAt(certificate.token);
        expect(now).toMatch(/^[0-9a-f]{64}$/);
        expect(now).not.toBe(checkpoint.hash);
      },
    );
  });

  it("finds a log that was cut or set back", async () => {
    await afterwards(
      () => admin.query(cutAfter(checkpoint.sequence - 1)),
      async () => {
        expect(await verifyChain()).toMatchObject({ kind: "whole" });
        expect(await inside()).toMatchObject({ kind: "missing", certificate: certificate.number });
        expect(await shown()).toMatchObject({ kind: "rewritten", what: expect.stringContaining("set back") });
        expect(await loggedAt(certificate.token)).toBe("");
        // And one that has gone on since.
        await append(5, "another day");
        expect(await verifyChain()).toMatchObject({ kind: "whole" });
        expect(await inside()).toMatchObject({ kind: "different", sequence: checkpoint.sequence });
        expect(await loggedAt(certificate.token)).not.toBe(checkpoint.hash);
      },
    );
  });

  it("says nothing of what came after it", async () => {
    await afterwards(
      () => admin.query(rewrittenFrom(checkpoint.sequence + 1, "actor_id = 'system:x'")),
      async () => {
        expect(await inside()).toBeNull();
        expect(await loggedAt(certificate.token)).toBe(checkpoint.hash);
      },
    );
  });

  it("is none of a certificate from before, nor of one that nobody knows", async () => {
    expect(await loggedAt(plain.token)).toBe("");
    expect(await loggedAt("none".padEnd(43, "x"))).toBe("");
  });
});
