import { createHash } from "node:crypto";
import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { refusalCode } from "./refusal-code";
import { type TwoCustomers, twoCustomers } from "./two-customers";

/** The last defence: whatever the product forgets, no reading comes before the gate, and no load changes after it. */

let database: TestDatabase;
let admin: pg.Client;
let runtime: pg.Client;
let world: TwoCustomers;
/** Planned, with a load, before its gate. */
let planned: string;

const refused = "23001"; // restrict_violation
const quoted = (bytes: string) => `'\\x${createHash("sha256").update(bytes).digest("hex")}'`;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  world = await twoCustomers(admin);
  runtime = await connect(database.runtimeUrl);
  const { rows } = await admin.query<{ id: string }>(
    `INSERT INTO run (number, configuration_id, voltmeter_id, scanner_id, performer_id, created_at, procedure_revision_id, budget_inputs)
     SELECT 'R-9', configuration_id, voltmeter_id, scanner_id, performer_id, created_at, procedure_revision_id, budget_inputs
       FROM run WHERE id = $1 RETURNING id`,
    [world.sharedRun.id],
  );
  planned = rows[0]!.id;
});

afterAll(async () => {
  await runtime?.end();
  await admin?.end();
  await database?.drop();
});

const outcome = (verdict: string) =>
  `INSERT INTO gate_outcome (run_id, verdict, rows, policy, plan_digest, assessed_by_id, assessed_at)
   VALUES ('${planned}', '${verdict}', '[]', '{}', ${quoted("plan")}, '${world.technicianId}', now())`;
const block = (run: string, sequence: number) =>
  `INSERT INTO scan_block (run_id, sequence, source, source_sha256, reading_count, leaves, root, received_by_id, received_at)
   VALUES ('${run}', ${sequence}, 'file', ${quoted("source")}, 1, ${quoted("leaf")}, ${quoted("root")}, '${world.technicianId}', now())`;
const place = (run: string) =>
  `INSERT INTO load_place (run_id, place, kind, channel, junction_id, junction_celsius)
   VALUES ('${run}', 'z', 'shorted', 'z', '${world.junctionId}', 0)`;

describe("the first reading", () => {
  it("is refused while the gate of its run has not been passed", async () => {
    expect(await refusalCode(runtime, block(planned, 1))).toBe(refused);
    for (const verdict of ["needs-reasons", "refused"])
      expect(await refusalCode(runtime, `${outcome(verdict)}; ${block(planned, 1)}`)).toBe(refused);
  });

  it("is refused when the gate was passed and then was not", async () => {
    const turned = `${outcome("may-start")}; ${outcome("refused")}; ${block(planned, 1)}`;
    expect(await refusalCode(runtime, turned)).toBe(refused);
  });

  it("is taken once the gate is passed, and others after it", async () => {
    expect(await refusalCode(runtime, `${outcome("may-start")}; ${block(planned, 1)}`)).toBeUndefined();
    expect(await refusalCode(runtime, block(world.sharedRun.id, 2))).toBeUndefined();
  });

  it("is refused to the superuser's session too", async () => {
    expect(
      await refusalCode(admin, `SET LOCAL session_replication_role = replica; ${block(planned, 1)}`),
    ).toBe(refused);
  });
});

describe("a load that has passed its gate", () => {
  it.each([
    ["another place", place],
    [
      "a place changed",
      (run: string) => `UPDATE load_place SET channel = 'x' WHERE run_id = '${run}' AND place = '0'`,
    ],
    [
      "a place taken out",
      (run: string) => `DELETE FROM load_place WHERE run_id = '${run}' AND kind = 'sensor'`,
    ],
    [
      "another setpoint",
      (run: string) => `INSERT INTO run_setpoint (run_id, position, celsius) VALUES ('${run}', 9, 900)`,
    ],
    ["a setpoint changed", (run: string) => `UPDATE run_setpoint SET celsius = 900 WHERE run_id = '${run}'`],
    ["another scanner", (run: string) => `UPDATE run SET scanner_id = voltmeter_id WHERE id = '${run}'`],
  ])("keeps out %s", async (_name, sql) => {
    expect(await refusalCode(runtime, sql(world.sharedRun.id))).toBe(refused);
  });

  it("could still be changed before, and its run's state moves on after", async () => {
    expect(await refusalCode(runtime, place(planned))).toBeUndefined();
    const moved = `UPDATE run SET state = 'measuring', version = version + 1 WHERE id = '${world.sharedRun.id}'`;
    expect(await refusalCode(runtime, moved)).toBeUndefined();
  });
});

it("the room is told while the run is the technician's, at its start or its end", async () => {
  const tell = (run: string, moment: string) =>
    `INSERT INTO bench_check (run_id, kind, channel, figures, checked_by_id, checked_at)
     SELECT id, 'ambient', '${moment}', '{}', performer_id, now() FROM run WHERE id = '${run}'`;
  expect(await refusalCode(runtime, tell(planned, "start"))).toBeUndefined();
  expect(await refusalCode(runtime, tell(planned, "end"))).toBe(refused);
  expect(await refusalCode(runtime, tell(planned, "noon"))).toBe("23514"); // check_violation
  const over = `UPDATE run SET state = 'submitted' WHERE id = '${world.sharedRun.id}'`;
  expect(await refusalCode(runtime, `${over}; ${tell(world.sharedRun.id, "start")}`)).toBe(refused);
});
