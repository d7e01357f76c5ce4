import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { buildRun } from "../support/build-run";
import { buildWorld, type World } from "../support/build-world";
import { type TestDatabase, testDatabase } from "../support/database";

// As the product's own role: what no screen and no operation would stop, the database does.

let database: TestDatabase;
let runtime: pg.Client;
let world: World;
let run: string;
const check = "23514";

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  run = (await buildRun(world, { owners: ["north"] })).run.id;
  runtime = await connect(database.runtimeUrl);
});
afterAll(async () => {
  await runtime?.end();
  await closeDatabase();
  await database.drop();
});

/** Statements in one transaction that is rolled back: SQLSTATE and hint of the refusal, or null. */
const attempt = async (...statements: readonly string[]): Promise<string | null> => {
  await runtime.query("BEGIN; SET LOCAL app.scope = 'laboratory'");
  try {
    for (const statement of statements) await runtime.query(statement);
    return null;
  } catch (error) {
    const { code, hint } = error as pg.DatabaseError;
    return [code, hint].filter(Boolean).join(" ");
  } finally {
    await runtime.query("ROLLBACK");
  }
};

/** A run like the one that is there, made at a moment. */
const anotherRun = (createdAt = "2026-03-02T08:00:00Z") =>
  `INSERT INTO run (number, configuration_id, voltmeter_id, scanner_id, performer_id, created_at, procedure_revision_id, budget_inputs)
   SELECT 'R-NEW', configuration_id, voltmeter_id, scanner_id, performer_id, '${createdAt}', procedure_revision_id, budget_inputs
     FROM run WHERE id = '${run}'`;
const place = (reference: string) =>
  `INSERT INTO load_place (run_id, place, kind, equipment_id, channel, junction_id, junction_celsius)
   SELECT id, '1', 'reference', '${reference}', '1', '${world.junction.id}', 0 FROM run WHERE number = 'R-NEW'`;
const setpoint = (celsius: number) =>
  `INSERT INTO run_setpoint (run_id, position, celsius) SELECT id, 1, ${celsius} FROM run WHERE number = 'R-NEW'`;
const reject = (equipmentId: string) =>
  `INSERT INTO calibration_decision (calibration_id, decision, checks, reason, decided_by_id, decided_at)
   SELECT id, 'rejected', '[]', 'wrong', '${world.people.signatory.personId}', '2026-03-02T08:00:00Z'
     FROM calibration WHERE equipment_id = '${equipmentId}'`;
/** Damage in its logbook, and the state that follows. */
const state = (equipmentId: string, word: string) =>
  `INSERT INTO equipment_entry (equipment_id, kind, happened_on, summary, recorded_at)
     VALUES ('${equipmentId}', 'damage', '2026-02-01', 'fell', now());
   UPDATE equipment SET state = '${word}' WHERE id = '${equipmentId}'`;

describe("a run stands only on what may be used", () => {
  const voltmeter = () => world.voltmeter.id;
  const reference = () => world.references[0].id;

  it("takes what is accepted, in date, approved and within its range", async () => {
    expect(await attempt(anotherRun(), setpoint(600), place(reference()))).toBeNull();
  });

  it("refuses instruments by their ground", async () => {
    expect(await attempt(anotherRun("2027-01-11T08:00:00Z"))).toBe(`${check} not-in-date`);
    expect(await attempt(anotherRun("2026-01-12T20:00:00Z"))).toMatch(/^23514/);
    expect(await attempt(state(voltmeter(), "suspect"), anotherRun())).toBe(`${check} suspect`);
    expect(await attempt(state(voltmeter(), "under-repair"), anotherRun())).toBe(`${check} not-in-service`);
    expect(await attempt(reject(voltmeter()), anotherRun())).toBe(`${check} not-accepted`);
    const suspended = "UPDATE provider SET state = 'suspended'";
    expect(await attempt(suspended, anotherRun())).toBe(`${check} issuer-not-approved`);
    const late = "UPDATE provider SET approved_from = '2026-01-11'";
    expect(await attempt(late, anotherRun())).toBe(`${check} issuer-not-approved`);
    const kinds = `UPDATE provider SET scope = '[{"kind":"reference"}]'`;
    expect(await attempt(kinds, anotherRun())).toBe(`${check} issuer-not-approved`);
  });

  it("refuses a reference and a junction of the load by theirs", async () => {
    expect(await attempt(anotherRun(), state(reference(), "suspect"), place(reference()))).toBe(
      `${check} suspect`,
    );
    expect(await attempt(anotherRun(), reject(reference()), place(reference()))).toBe(
      `${check} not-accepted`,
    );
    expect(await attempt(anotherRun(), state(world.junction.id, "suspect"), place(reference()))).toBe(
      `${check} suspect`,
    );
    // A junction may stand without a certificate: what the laboratory found of it counts.
    expect(await attempt(reject(world.junction.id), anotherRun(), place(reference()))).toBeNull();
  });

  it("carries no certificate beyond its range, whichever comes first, setpoint or reference", async () => {
    for (const beyond of [299.9, 1100.1]) {
      expect(await attempt(anotherRun(), setpoint(beyond), place(reference()))).toBe(
        `${check} reference-range`,
      );
      expect(await attempt(anotherRun(), place(reference()), setpoint(beyond))).toBe(
        `${check} reference-range`,
      );
    }
    for (const at of [300, 1100])
      expect(await attempt(anotherRun(), setpoint(at), place(reference()))).toBeNull();
  });

  it("and lets nobody change what it stands on afterwards to what may not be used", async () => {
    const change = `UPDATE run SET voltmeter_id = '${world.references[1].id}' WHERE number = 'R-NEW'`;
    expect(await attempt(anotherRun(), state(world.references[1].id, "suspect"), change)).toBe(
      `${check} suspect`,
    );
  });
});

describe("a decision on a calibration", () => {
  const decision = (more: string) =>
    `INSERT INTO calibration_decision (calibration_id, decision, checks, reason, decided_by_id, decided_at)
     SELECT id, ${more} FROM calibration WHERE equipment_id = '${world.voltmeter.id}'`;
  const quality = () => `'${world.people.quality.personId}'`;

  it("names who took it, follows what it decides on, and is not dated back before a run that uses it", async () => {
    expect(await attempt(decision("'rejected', '[]', 'r', NULL, now()"))).toBe(check);
    expect(await attempt(decision(`'rejected', '[]', 'r', ${quality()}, '2026-01-11'`))).toBe(check);
    expect(await attempt(decision(`'rejected', '[]', 'r', ${quality()}, '2026-03-01'`))).toBe(check);
    expect(await attempt(decision(`'rejected', '[]', 'r', ${quality()}, '2026-03-03'`))).toBeNull();
  });

  it("is another person's, and final where it rejects", async () => {
    const own = `INSERT INTO calibration (equipment_id, certificate, issuer, route, performed_on, due_on, findings, recorded_by_id, recorded_at)
      SELECT equipment_id, 'OWN', issuer, route, performed_on, due_on, findings, ${quality()}, recorded_at FROM calibration WHERE equipment_id = '${world.voltmeter.id}'`;
    const accept = (who: string) =>
      `INSERT INTO calibration_decision (calibration_id, decision, checks, decided_by_id, decided_at)
       SELECT id, 'accepted', '[]', ${who}, '2026-06-01' FROM calibration WHERE certificate = 'OWN'`;
    const other = `'${world.people.signatory.personId}'`;
    expect(await attempt(own, accept(quality()))).toBe(check);
    expect(await attempt(own, accept(other))).toBeNull();
    const rejected = decision(`'rejected', '[]', 'r', ${quality()}, '2026-03-03'`);
    expect(await attempt(rejected, decision(`'accepted', '[]', '', ${quality()}, '2026-03-04'`))).toBe(check);
  });
});

describe("a certificate", () => {
  const again = (more = "") =>
    `INSERT INTO calibration (equipment_id, certificate, issuer, route, performed_on, due_on, findings, recorded_at)
     SELECT equipment_id, certificate, issuer, route, performed_on, due_on, findings, recorded_at
       FROM calibration WHERE certificate = 'CAL-V-1' ${more}`;

  it("is on record once for a thing, unless its record was rejected", async () => {
    expect(await attempt(again())).toBe("23505");
    expect(await attempt(reject(world.voltmeter.id), again())).toBeNull();
    expect(await attempt(reject(world.voltmeter.id), again(), again("LIMIT 1"))).toBe("23505");
  });

  it("that two record at once waits for the other, and is refused", async () => {
    const second = await connect(database.runtimeUrl);
    const begin = "BEGIN; SET LOCAL app.scope = 'laboratory'";
    await Promise.all([runtime.query(begin), second.query(begin)]);
    const fresh = again().replace("SELECT equipment_id, certificate", "SELECT equipment_id, 'AT-ONCE'");
    await runtime.query(fresh);
    const waiting = second.query(fresh).then(
      () => null,
      (error: pg.DatabaseError) => error.code,
    );
    await runtime.query("COMMIT");
    expect(await waiting).toBe("23505");
    await second.query("ROLLBACK");
    await second.end();
    const rows = await inScope({ kind: "laboratory" }, (tx) =>
      tx.calibration.count({ where: { certificate: "AT-ONCE" } }),
    );
    expect(rows).toBe(1);
  });
});
