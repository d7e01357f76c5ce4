import type pg from "pg";
import { afterEach, beforeEach, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { appendAuditEvents } from "@/lib/data/audit/append";
import { type ChainVerdict, verifyChain } from "@/lib/data/audit/verify-chain";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { rehash } from "@/tests/support/rewrite-log";

/** A superuser can take the triggers away and rewrite anything. The chain does not prevent that; it tells. */

let database: TestDatabase;
let admin: pg.Client;

const events = Array.from({ length: 30 }, (_, index) => ({
  action: "thing.made",
  entityKind: "thing",
  entityId: `${index + 1}`,
  payload: { note: "one two", place: index + 1 },
}));

beforeEach(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  configureDatabase(database.runtimeUrl);
  await inScope({ kind: "laboratory" }, (tx) => appendAuditEvents(tx, "system:test", events));
  await admin.query(
    "ALTER TABLE audit_event DISABLE TRIGGER ALL; ALTER TABLE audit_head DISABLE TRIGGER ALL",
  );
});

afterEach(async () => {
  await closeDatabase();
  await admin.end();
  await database.drop();
});

const brokenAt = (sequence: number, reason: string): ChainVerdict =>
  expect.objectContaining({ kind: "broken", broken: { sequence: BigInt(sequence), reason } });

type Tampering = readonly [name: string, sql: string, sequence: number, reason: string];

const tamperings: readonly Tampering[] = [
  [
    "another payload",
    `UPDATE audit_event SET payload = '{"note":"three"}' WHERE sequence = 12`,
    12,
    "changed",
  ],
  ["another actor", "UPDATE audit_event SET actor_id = 'system:seed' WHERE sequence = 12", 12, "changed"],
  [
    "another microsecond",
    "UPDATE audit_event SET at_microseconds = at_microseconds + 1 WHERE sequence = 12",
    12,
    "changed",
  ],
  [
    "white space in the payload",
    `UPDATE audit_event SET payload = replace(payload, ',', ', ') WHERE sequence = 12`,
    12,
    "changed",
  ],
  [
    "text moved from one field to the next",
    "UPDATE audit_event SET action = 'thing.mad', entity_kind = 'ething' WHERE sequence = 12",
    12,
    "changed",
  ],
  [
    "another payload with its own hash recomputed",
    `UPDATE audit_event SET payload = '{}' WHERE sequence = 12; UPDATE audit_event SET hash = ${rehash} WHERE sequence = 12`,
    13,
    "not-linked",
  ],
  ["an event in the middle deleted", "DELETE FROM audit_event WHERE sequence = 12", 12, "missing"],
  ["the first event deleted", "DELETE FROM audit_event WHERE sequence = 1", 1, "missing"],
  [
    "an event deleted and the rest renumbered",
    `DELETE FROM audit_event WHERE sequence = 12;
     UPDATE audit_event SET sequence = -sequence WHERE sequence > 12;
     UPDATE audit_event SET sequence = -sequence - 1 WHERE sequence < 0`,
    12,
    "not-linked",
  ],
  [
    "two events swapped",
    `UPDATE audit_event SET sequence = CASE sequence WHEN 12 THEN -13 ELSE -12 END WHERE sequence IN (12, 13);
     UPDATE audit_event SET sequence = -sequence WHERE sequence < 0`,
    12,
    "not-linked",
  ],
  [
    "a forged event inserted",
    `UPDATE audit_event SET sequence = -sequence WHERE sequence > 12;
     UPDATE audit_event SET sequence = 1 - sequence WHERE sequence < 0;
     INSERT INTO audit_event SELECT 13, at_microseconds, actor_id, action, entity_kind, entity_id, '{}', hash, hash
       FROM audit_event WHERE sequence = 12;
     UPDATE audit_event SET hash = ${rehash} WHERE sequence = 13`,
    14,
    "not-linked",
  ],
  ["the tail cut off, the head left", "DELETE FROM audit_event WHERE sequence > 25", 26, "cut"],
  ["everything deleted, the head left", "DELETE FROM audit_event", 1, "cut"],
  ["the head set back", "UPDATE audit_head SET sequence = 25", 26, "beyond-head"],
  ["the head's hash changed", "UPDATE audit_head SET hash = sha256('x')", 30, "changed"],
  ["the head deleted", "DELETE FROM audit_head", 0, "cut"],
];

it.each(tamperings)("finds %s", async (_name, sql, sequence, reason) => {
  // The CHECKs go too: a superuser would not be stopped by them.
  await admin.query("ALTER TABLE audit_event DROP CONSTRAINT audit_event_sequence_check");
  expect(await verifyChain({ pageSize: 7 })).toMatchObject({ kind: "whole", events: 30 });
  await admin.query(sql);
  expect(await verifyChain({ pageSize: 7 })).toEqual(brokenAt(sequence, reason));
  expect(await verifyChain()).toEqual(brokenAt(sequence, reason));
});

it("finds nothing when nothing was done, and takes an honest append", async () => {
  await admin.query("ALTER TABLE audit_event ENABLE ALWAYS TRIGGER refuse_change");
  await inScope({ kind: "laboratory" }, (tx) => appendAuditEvents(tx, "system:test", events.slice(0, 1)));
  expect(await verifyChain({ pageSize: 31 })).toMatchObject({ kind: "whole", events: 31 });
});
