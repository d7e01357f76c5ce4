import { createHash } from "node:crypto";
import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { refusalCode } from "./refusal-code";
import { type TwoCustomers, twoCustomers } from "./two-customers";

/** The last defence of work in parts, whatever the product forgets. */

let database: TestDatabase;
let admin: pg.Client;
let runtime: pg.Client;
let world: TwoCustomers;
/** Planned, with A's sensor in its load, measured before in the shared run. */
let planned: string;

const restricted = "23001";
const violated = "23514";
const quoted = (text: string) => `'\\x${createHash("sha256").update(text).digest("hex")}'`;

const insertRun = async (number: string): Promise<string> => {
  const { rows } = await admin.query<{ id: string }>(
    `INSERT INTO run (number, configuration_id, voltmeter_id, scanner_id, performer_id, created_at, procedure_revision_id, budget_inputs)
     SELECT $2, configuration_id, voltmeter_id, scanner_id, performer_id, created_at, procedure_revision_id, budget_inputs
       FROM run WHERE id = $1 RETURNING id`,
    [world.sharedRun.id, number],
  );
  return rows[0]!.id;
};

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  world = await twoCustomers(admin);
  runtime = await connect(database.runtimeUrl);
  planned = await insertRun("R-9");
  await admin.query("INSERT INTO run_setpoint (run_id, position, celsius) VALUES ($1, 1, 600)", [planned]);
  await admin.query(place("as-received"));
  // The order was changed since; what stands still for that is another guard's.
  await admin.query(
    `INSERT INTO order_change_acknowledgment (change_id, run_id, acknowledged_by_id, acknowledged_at)
     SELECT id, $1, $2, now() FROM order_change`,
    [planned, world.technicianId],
  );
  await admin.query(
    `INSERT INTO gate_outcome (run_id, verdict, rows, policy, plan_digest, assessed_by_id, assessed_at)
     VALUES ('${planned}', 'may-start', '[]', '{}', ${quoted("plan")}, '${world.technicianId}', now())`,
  );
});

afterAll(async () => {
  await runtime?.end();
  await admin?.end();
  await database?.drop();
});

const place = (set: string, kind = "sensor") =>
  `INSERT INTO load_place (run_id, place, kind, sensor_id, customer_id, channel, junction_id, junction_celsius, set_kind)
   VALUES ('${planned}', '${kind}-${set}', '${kind}', ${kind === "sensor" ? `'${world.a.sensorId}', '${world.a.customerId}'` : "NULL, NULL"},
           '${kind}-${set}', '${world.junctionId}', 0, '${set}')`;
const block = (run: string) =>
  `INSERT INTO scan_block (run_id, sequence, source, source_sha256, reading_count, leaves, root, received_by_id, received_at)
   VALUES ('${run}', 1, 'file', ${quoted("source")}, 1, ${quoted("leaf")}, ${quoted("root")}, '${world.technicianId}', now())`;
const repeat = (earlier: string, run: string, owner: TwoCustomers["a"] = world.a) =>
  `INSERT INTO repeat_measurement (sensor_id, customer_id, earlier_run_id, run_id, counting_rule, reason, authorised_by_id, authorised_at)
   VALUES ('${owner.sensorId}', '${owner.customerId}', '${earlier}', '${run}', 'later-counts', 'a slip', '${world.technicianId}', now())`;
const decision = (what: string, reason = "a reason") =>
  `INSERT INTO review_decision (run_id, evaluation_id, sensor_id, decision, reason, decided_by_id, decided_at)
   VALUES ('${world.sharedRun.id}', '${world.sharedRun.evaluationId}', '${world.a.sensorId}', '${what}', '${reason}', '${world.technicianId}', now())`;
const state = (run: string, to: string) => `UPDATE run SET state = '${to}' WHERE id = '${run}'`;

describe("a sensor that was measured before", () => {
  it("gets no first reading until its repeat is authorised", async () => {
    expect(await refusalCode(runtime, block(planned))).toBe(restricted);
    expect(
      await refusalCode(runtime, `${repeat(world.sharedRun.id, planned)}; ${block(planned)}`),
    ).toBeUndefined();
  });

  it("is not authorised after the first reading", async () => {
    expect(await refusalCode(runtime, repeat(world.runOfB.id, world.sharedRun.id, world.b))).toBe(restricted);
  });

  it("has to be in both loads, with results in the earlier", async () => {
    expect(await refusalCode(runtime, repeat(world.runOfB.id, planned))).toBe(violated);
    expect(await refusalCode(runtime, repeat(world.sharedRun.id, planned, world.b))).toBe(violated);
  });
});

describe("a sensor in a review", () => {
  it("leaves once, and is not signed off from it afterwards", async () => {
    expect(await refusalCode(runtime, decision("put-back"))).toBeUndefined();
    for (const second of ["put-back", "kept", "signed-off"])
      expect(await refusalCode(runtime, `${decision("put-back")}; ${decision(second)}`)).toBe(violated);
    expect(await refusalCode(runtime, `${decision("signed-off")}; ${decision("put-back")}`)).toBe(violated);
  });

  it("is signed off where its results were kept for a certificate", async () => {
    expect(await refusalCode(runtime, `${decision("kept")}; ${decision("signed-off")}`)).toBeUndefined();
  });

  it("leaves with a reason", async () => {
    for (const what of ["put-back", "kept"])
      expect(await refusalCode(runtime, decision(what, ""))).toBe(violated);
  });
});

describe("an abandoned run", () => {
  it("stays abandoned, takes no reading, and was never handed over", async () => {
    const abandoned = state(planned, "abandoned");
    expect(await refusalCode(runtime, abandoned)).toBeUndefined();
    expect(await refusalCode(runtime, `${abandoned}; ${state(planned, "measuring")}`)).toBe(restricted);
    expect(
      await refusalCode(runtime, `${repeat(world.sharedRun.id, planned)}; ${abandoned}; ${block(planned)}`),
    ).toBe(restricted);
    for (const from of ["submitted", "returned", "signed-off"])
      expect(await refusalCode(runtime, `${state(planned, from)}; ${abandoned}`)).toBe(restricted);
  });
});

describe("a set after annealing", () => {
  it("is of a sensor that is measured here, and annealed where that is asked", async () => {
    expect(await refusalCode(runtime, place("after-anneal", "shorted"))).toBe(violated);
    const unannealed = await admin.query<{ id: string }>(
      `INSERT INTO sensor (tag, customer_id, order_line_id, serial, type_letter, construction, protection)
       SELECT 'T-X', customer_id, order_line_id, 'X', type_letter, construction, protection
         FROM sensor WHERE id = $1 RETURNING id`,
      [world.a.sensorId],
    );
    const id = unannealed.rows[0]!.id;
    expect(await refusalCode(runtime, place("after-anneal").replace(world.a.sensorId, id))).toBe(violated);
    const other = await insertRun("R-10");
    const loaded = place("as-received").replace(world.a.sensorId, id).replace(planned, other);
    expect(await refusalCode(runtime, loaded)).toBeUndefined();
    const goesToProvider = `UPDATE order_line SET provider_id = (SELECT id FROM provider LIMIT 1)
      WHERE id = (SELECT order_line_id FROM sensor WHERE id = '${id}')`;
    expect(await refusalCode(runtime, `${goesToProvider}; ${loaded}`)).toBe(violated);
  });
});

describe("a part of a certificate", () => {
  const part = (evaluation: string, run: string, set: string) =>
    `INSERT INTO certificate_part (certificate_id, customer_id, position, sensor_id, run_id, evaluation_id, set_kind)
     SELECT id, customer_id, 9, sensor_id, '${run}', '${evaluation}', '${set}' FROM certificate
      WHERE sensor_id = '${world.a.sensorId}' LIMIT 1`;

  it("was measured there, as that set", async () => {
    const { evaluationId, id } = world.sharedRun;
    expect(await refusalCode(runtime, part(evaluationId, id, "after-anneal"))).toBe(violated);
    expect(await refusalCode(runtime, part(world.runOfB.evaluationId, world.runOfB.id, "as-received"))).toBe(
      violated,
    );
    expect(await refusalCode(runtime, part(evaluationId, world.runOfB.id, "as-received"))).toMatch(/^23/);
  });
});
