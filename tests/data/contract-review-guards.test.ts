import { createHash } from "node:crypto";
import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { refusalCode } from "./refusal-code";
import { type TwoCustomers, twoCustomers } from "./two-customers";

/** The last defence of the contract review: whatever the product forgets, the database does not. */

let database: TestDatabase;
let admin: pg.Client;
let runtime: pg.Client;
let world: TwoCustomers;

const refused = "23001"; // restrict_violation
const quoted = (bytes: string) => `'\\x${createHash("sha256").update(bytes).digest("hex")}'`;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  world = await twoCustomers(admin);
  runtime = await connect(database.runtimeUrl);
});
afterAll(async () => {
  await runtime?.end();
  await admin?.end();
  await database?.drop();
});

const orderOf = (state: string) =>
  `INSERT INTO customer_order (id, number, customer_id, state, decision_rule, recorded_by_id, recorded_at)
   VALUES ('00000000-0000-4000-8000-00000000000a', 'O-guard', '${world.a.customerId}', '${state}', 'none', '${world.technicianId}', now())`;
const fresh = "00000000-0000-4000-8000-00000000000a";
const review = (order: string, version: number, occasion = "acceptance") =>
  `INSERT INTO order_review (order_id, customer_id, sequence, occasion, answers, capability, order_version, reviewed_by_id, reviewed_at)
   VALUES ('${order}', '${world.a.customerId}', 7, '${occasion}', '{}', '[]', ${version}, '${world.technicianId}', now())`;
const accept = (order: string) =>
  `UPDATE customer_order SET state = 'accepted', version = version + 1 WHERE id = '${order}'`;
const difference = (order: string) =>
  `INSERT INTO order_difference (id, order_id, customer_id, text, raised_by_id, raised_at)
   VALUES ('00000000-0000-4000-8000-00000000000d', '${order}', '${world.a.customerId}', 'x', '${world.technicianId}', now())`;
const settlement = () =>
  `INSERT INTO order_difference_settlement (difference_id, customer_id, text, agreed_with, settled_by_id, settled_at)
   VALUES ('00000000-0000-4000-8000-00000000000d', '${world.a.customerId}', 'x', 'C', '${world.technicianId}', now())`;
const change = (order: string, at = "now()") =>
  `INSERT INTO order_change (id, order_id, customer_id, sequence, reason, agreed_with, before, after, changed_by_id, changed_at)
   VALUES ('00000000-0000-4000-8000-00000000000c', '${order}', '${world.a.customerId}', 7, 'r', 'C', '{}', '{}', '${world.technicianId}', ${at})`;
const acknowledgment = (run: string) =>
  `INSERT INTO order_change_acknowledgment (change_id, run_id, acknowledged_by_id, acknowledged_at)
   VALUES ('00000000-0000-4000-8000-00000000000c', '${run}', '${world.technicianId}', now())`;
const block = (run: string) =>
  `INSERT INTO scan_block (run_id, sequence, source, source_sha256, reading_count, leaves, root, received_by_id, received_at)
   VALUES ('${run}', 9, 'file', ${quoted("source")}, 1, ${quoted("leaf")}, ${quoted("root")}, '${world.technicianId}', now())`;
const window = (run: string, setpoint: string) =>
  `INSERT INTO stability_window (run_id, setpoint_id, from_seconds, to_seconds, origin, assessment, blocks_digest, accepted_by_id, accepted_at)
   VALUES ('${run}', '${setpoint}', 0, 1, 'moved', '{}', ${quoted("blocks")}, '${world.technicianId}', now())`;
const attempt = (...statements: string[]) => refusalCode(runtime, statements.join("; "));
const atEnd = "SET CONSTRAINTS ALL IMMEDIATE";

describe("accepting an order", () => {
  it("is refused without a review of that order", async () => {
    expect(await attempt(orderOf("recorded"), accept(fresh))).toBe(refused);
    expect(await attempt(orderOf("recorded"), review(fresh, 1), accept(fresh))).toBeUndefined();
  });

  it("is refused with the review of another version, of a change, or of another order", async () => {
    expect(await attempt(orderOf("recorded"), review(fresh, 2), accept(fresh))).toBe(refused);
    expect(await attempt(orderOf("recorded"), review(fresh, 1, "change"), accept(fresh))).toBe(refused);
    expect(await attempt(orderOf("recorded"), review(world.a.orderId, 1), accept(fresh))).toBe(refused);
  });

  it("is refused while a difference is open", async () => {
    const reviewed = [orderOf("recorded"), review(fresh, 1), difference(fresh)];
    expect(await attempt(...reviewed, accept(fresh))).toBe(refused);
    expect(await attempt(...reviewed, settlement(), accept(fresh))).toBeUndefined();
  });

  it("is refused to an order that begins so, unless its review comes with it", async () => {
    for (const state of ["accepted", "completed"]) {
      expect(await attempt(orderOf(state), atEnd)).toBe(refused);
      expect(await attempt(orderOf(state), review(fresh, 1), atEnd)).toBeUndefined();
    }
    expect(await attempt(orderOf("requested"), atEnd)).toBeUndefined();
  });

  it("is refused to the superuser's session too", async () => {
    const hidden = `SET LOCAL session_replication_role = replica; ${orderOf("recorded")}; ${accept(fresh)}`;
    expect(await refusalCode(admin, hidden)).toBe(refused);
  });
});

describe("lines of an accepted order", () => {
  const line = () => `UPDATE order_line SET quantity = 9 WHERE id = '${world.a.lineId}'`;
  const setpoint = () => `DELETE FROM order_setpoint WHERE order_line_id = '${world.a.lineId}'`;

  it("change with a record of the change in the same transaction only", async () => {
    for (const what of [line(), setpoint()]) {
      expect(await attempt(what), "not accepted yet").toBeUndefined();
      expect(await attempt(accept(world.a.orderId), what)).toBe(refused);
      expect(await attempt(accept(world.a.orderId), change(world.b.orderId), what)).not.toBeUndefined();
      expect(await attempt(accept(world.a.orderId), change(world.a.orderId), what)).toBeUndefined();
    }
  });
});

describe("a difference that is open", () => {
  const gate = (run: string) =>
    `INSERT INTO gate_outcome (run_id, verdict, rows, policy, plan_digest, assessed_by_id, assessed_at)
     VALUES ('${run}', 'may-start', '[]', '{}', ${quoted("plan")}, '${world.technicianId}', now())`;

  it("stops a change of the order, and the start of a run with a sensor of it", async () => {
    const { a, b, sharedRun, runOfB } = world;
    const knownToB = `INSERT INTO order_change_acknowledgment (change_id, run_id, acknowledged_by_id, acknowledged_at)
      SELECT id, '${runOfB.id}', changed_by_id, now() FROM order_change WHERE order_id = '${b.orderId}'`;
    for (const what of [change(a.orderId), gate(sharedRun.id)]) {
      expect(await attempt(what)).toBeUndefined();
      expect(await attempt(difference(a.orderId), what)).toBe(refused);
      expect(await attempt(difference(a.orderId), settlement(), what)).toBeUndefined();
    }
    const ofAnother = [knownToB, difference(a.orderId), gate(runOfB.id)];
    expect(await attempt(...ofAnother)).toBeUndefined();
  });

  it("is no more needed to stop the furnace than a change nobody acknowledged", async () => {
    const { id } = world.sharedRun;
    expect(await attempt(change(world.a.orderId), gate(id))).toBe(refused);
    expect(await attempt(change(world.a.orderId), acknowledgment(id), gate(id))).toBeUndefined();
  });
});

describe("a run with a sensor of an order that was changed", () => {
  it("takes no reading, no window and no evaluation until the change is acknowledged for it", async () => {
    const { id, setpointId } = world.sharedRun;
    for (const what of [block(id), window(id, setpointId)]) {
      expect(await attempt(what)).toBeUndefined();
      expect(await attempt(change(world.a.orderId), what)).toBe(refused);
      expect(await attempt(change(world.a.orderId), acknowledgment(world.runOfB.id), what)).toBe(refused);
      expect(await attempt(change(world.a.orderId), acknowledgment(id), what)).toBeUndefined();
    }
  });

  it("does not mind a change from before it was made, or of an order that is not in it", async () => {
    const { id } = world.sharedRun;
    expect(await attempt(change(world.a.orderId, "'2026-01-01'"), block(id))).toBeUndefined();
    const other = `INSERT INTO order_change_acknowledgment (change_id, run_id, acknowledged_by_id, acknowledged_at)
      SELECT id, '${world.runOfB.id}', changed_by_id, now() FROM order_change WHERE order_id = '${world.b.orderId}'`;
    expect(await attempt(change(world.a.orderId), other, block(world.runOfB.id))).toBeUndefined();
  });
});
