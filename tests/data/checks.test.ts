import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { refusalCode } from "./refusal-code";
import { type TwoCustomers, twoCustomers } from "./two-customers";
import { writtenColumns } from "./written-columns";

const checkViolation = "23514";
const foreignKeyViolation = "23503";

let database: TestDatabase;
let admin: pg.Client;
let runtime: pg.Client;
let world: TwoCustomers;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  runtime = await connect(database.runtimeUrl);
  world = await twoCustomers(admin);
});

afterAll(async () => {
  await Promise.all([admin?.end(), runtime?.end()]);
  await database?.drop();
});

/** Copies an existing row with some columns changed: refused for these columns' sake and no other. */
const variant = async (
  table: string,
  changes: Readonly<Record<string, unknown>>,
): Promise<string | undefined> => {
  const fresh = await admin.query(`SELECT to_jsonb(t) AS row FROM ${table} t LIMIT 1`);
  const row = JSON.stringify({ ...fresh.rows[0].row, ...changes }).replaceAll("'", "''");
  const names = await writtenColumns(admin, table);
  return refusalCode(
    runtime,
    `INSERT INTO ${table} (${names}) SELECT ${names} FROM jsonb_populate_record(NULL::${table}, '${row}')`,
  );
};

describe("numbers", () => {
  it("are finite in every column that could hold another", async () => {
    const { rows } = await admin.query(
      `SELECT c.table_name || '_' || c.column_name || '_finite' AS wanted FROM information_schema.columns c
         WHERE table_schema = 'public' AND data_type IN ('double precision', 'real') AND NOT EXISTS (
           SELECT FROM pg_constraint k WHERE k.conrelid = c.table_name::regclass AND k.convalidated
             AND k.conname = left(c.table_name || '_' || c.column_name || '_finite', 63))`,
    );
    expect(rows).toEqual([]);
  });

  it.each(["NaN", "Infinity", "-Infinity"])("are never %s", async (value) => {
    expect(await variant("run_setpoint", { position: 9, celsius: value })).toBe(checkViolation);
    expect(await variant("tip_check", { id: 99, rise_microvolt: value })).toBe(checkViolation);
    expect(await variant("intake", { insulation_megaohm: value })).toBe(checkViolation);
  });
});

describe("words and figures", () => {
  it.each([
    ["customer_order", { state: "done" }],
    ["customer_order", { decision_rule: "guarded" }],
    ["customer_order", { guard_band_ratio: 1 }],
    ["customer_order", { decision_rule: "guarded-binary" }],
    ["customer_order", { decision_rule: "target-risk" }],
    ["customer_order", { false_acceptance_percent: 5 }],
    ["customer_order", { decision_rule: "target-risk", false_acceptance_percent: 51 }],
    ["customer_order", { decision_rule: "guarded-other", guard_band_ratio: 1 }],
    ["customer_order", { uncertainty_digits: 3 }],
    ["order_line", { type_letter: "KK" }],
    ["order_line", { temperature_unit: "K" }],
    ["order_line", { quantity: 0 }],
    ["order_line", { tolerance_class: "1" }],
    ["sensor", { state: "received\nissued" }],
    ["sensor", { serial: "" }],
    ["equipment", { kind: "balance" }],
    ["equipment", { state: "mislaid" }],
    ["equipment_entry", { id: 99, outcome: "fine" }],
    ["evidence_document", { bytes: "\\x00" }],
    ["calibration", { source: "in-house" }],
    ["calibration_parent", { position: 2, below: 2 }],
    ["calibration_decision", { id: 99, decision: "rejected" }],
    ["provider", { name: "Q", approved_from: null }],
    ["provider", { name: "Q", approved_until: "2025-12-31" }],
    ["calibration", { source: "dcc" }],
    ["scope_line", { valid_until: "2025-12-31" }],
    ["procedure_revision", { revision: 2, state: "withdrawn" }],
    ["procedure_revision", { revision: 2, verification: "" }],
    ["characterisation", { source: "measured" }],
    ["characterisation_run", { number: "CH-2", state: "done" }],
    ["inhomogeneity_test", { sensor_id: null, customer_id: null }],
    ["gate_outcome", { id: 99, verdict: "fine" }],
    ["gate_override", { id: 99, reason: "" }],
    ["trace_node", { record_id: "x", kind: "thing" }],
    ["trace_edge", { id: 99, expanded: 0 }],
    ["equipment", { particulars: null }],
    ["calibration", { due_on: "2025-12-31" }],
    ["load_place", { customer_id: null, kind: "sensor" }],
    ["load_place", { kind: "shorted" }],
    ["scan_block", { root: "\\x00" }],
    ["scan_block", { leaves: "\\x00" }],
    ["scan_block_channel", { times: "\\x0000000000000000ff" }],
    ["scan_block_channel", { polarity: "\\x" }],
    ["scan_block_channel", { count: 2 }],
    ["scan_block_channel", { salt: "\\x" }],
    ["stability_window", { to_seconds: 0 }],
    ["sensor_setpoint_state", { reason: "" }],
    ["result", { state: "fine" }],
    ["review_decision", { decision: "returned" }],
    ["certificate", { token: "short" }],
    ["certificate_file", { bytes: "\\x" }],
    ["person", { email: "Upper@Example.org" }],
  ])("of %s refuse %o", async (table, changes) => {
    expect(await variant(table, changes)).toBe("particulars" in changes ? "23502" : checkViolation);
  });

  it("that are JSON are JSON", async () => {
    expect(await variant("equipment", { particulars: "{" })).toBe("22P02");
    expect(await variant("evaluation", { evidence: "{a: 1}" })).toBe("22P02");
  });
});

describe("references do not cross", () => {
  it.each([
    ["order_line", () => ({ order_id: world.a.orderId, customer_id: world.b.customerId })],
    ["order_setpoint", () => ({ order_line_id: world.a.lineId, customer_id: world.b.customerId })],
    ["sensor", () => ({ order_line_id: world.a.lineId, customer_id: world.b.customerId })],
    ["intake", () => ({ sensor_id: world.a.sensorId, customer_id: world.b.customerId })],
    ["sensor_setpoint_state", () => ({ sensor_id: world.a.sensorId, customer_id: world.b.customerId })],
    ["sensor_setpoint_state", () => ({ run_id: world.runOfB.id })],
    ["result", () => ({ sensor_id: world.a.sensorId, customer_id: world.b.customerId })],
    ["result", () => ({ run_id: world.runOfB.id })],
    ["result", () => ({ evaluation_id: world.runOfB.evaluationId })],
    ["result", () => ({ setpoint_id: world.runOfB.setpointId })],
    ["review_decision", () => ({ evaluation_id: world.runOfB.evaluationId })],
    ["certificate", () => ({ order_id: world.b.orderId })],
    ["certificate", () => ({ run_id: world.runOfB.id })],
    ["certificate_file", () => ({ customer_id: world.b.customerId })],
    ["tip_check", () => ({ run_id: world.runOfB.id })],
    ["stability_window", () => ({ run_id: world.runOfB.id })],
    ["scan_block_channel", () => ({ run_id: world.runOfB.id })],
  ])("in %s", async (table, changes) => {
    // An update, because a new row could be refused for its uniqueness; by a superuser, because nobody else may.
    const sets = Object.entries(changes()).map(([column, value]) => `${column} = '${value}'`);
    const update = `UPDATE ${table} SET ${sets} WHERE ctid = (SELECT min(ctid) FROM ${table})`;
    const change = `ALTER TABLE ${table} DISABLE TRIGGER USER; ${update}`;
    expect(await refusalCode(admin, change)).toBe(foreignKeyViolation);
  });
});

describe("roles", () => {
  const give = (personId: string, role: string) =>
    refusalCode(runtime, `INSERT INTO person_role VALUES ('${personId}', '${role}')`);

  it("of the laboratory are not for a customer's people, nor the other way round", async () => {
    expect(await give(world.a.personId, "signatory")).toBe(checkViolation);
    expect(await give(world.technicianId, "customer")).toBe(checkViolation);
    expect(await give(world.technicianId, "signatory")).toBeUndefined();
  });

  it("are those of the house", async () => {
    expect(await give(world.technicianId, "owner")).toBe(checkViolation);
  });
});
