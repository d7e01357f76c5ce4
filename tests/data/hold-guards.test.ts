import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { copiedCertificate } from "./copied-certificate";
import { refusalCode } from "./refusal-code";
import { type TwoCustomers, twoCustomers } from "./two-customers";

/** The last defence: whatever the product forgets, what is on hold goes no further, and nonconforming work not unseen. */

let database: TestDatabase;
let admin: pg.Client;
let runtime: pg.Client;
let world: TwoCustomers;
/** Planned, without a load. */
let planned: string;

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

const check = "23514"; // check_violation
const refused = (sql: string) => refusalCode(runtime, sql);
const id = (last: number) => `00000000-0000-4000-8000-00000000000${last}`;
const hold = (more: { sensor?: string | null; order?: string; nonconformity?: string } = {}) => {
  const sensor = more.sensor === null ? "NULL" : `'${more.sensor ?? world.a.sensorId}'`;
  const kind = more.nonconformity ? "nonconforming-work" : "condition";
  return `INSERT INTO hold (id, customer_id, order_id, sensor_id, kind, reason, nonconformity_id, placed_by_id, placed_at)
    VALUES ('${id(1)}', '${world.a.customerId}', '${more.order ?? world.a.orderId}', ${sensor}, '${kind}', 'bent',
            ${more.nonconformity ? `'${more.nonconformity}'` : "NULL"}, '${world.technicianId}', now())`;
};
const release = (outcome: string) =>
  `INSERT INTO hold_release (hold_id, customer_id, outcome, reason, disclaimer, released_by_id, released_at)
   VALUES ('${id(1)}', '${world.a.customerId}', '${outcome}', 'so', '${outcome.endsWith("disclaimer") ? "words" : ""}',
           '${world.technicianId}', now())`;
const load = (sensorId: string) =>
  `INSERT INTO load_place (run_id, place, kind, sensor_id, customer_id, channel, junction_id, junction_celsius)
   SELECT '${planned}', 'z', 'sensor', id, customer_id, 'z', '${world.junctionId}', 0 FROM sensor WHERE id = '${sensorId}'`;
const certificate = (sensorId: string) =>
  copiedCertificate(
    `jsonb_build_object('id', '${id(9)}', 'number', 'C-X', 'token', repeat('x', 43), 'sensor_id', '${sensorId}')`,
    `WHERE c.sensor_id = '${sensorId}' LIMIT 1`,
  );

describe("a hold", () => {
  it("keeps its sensor, or every sensor of its order, out of a load until it is released", async () => {
    const mine = load(world.a.sensorId);
    expect(await refused(mine)).toBeUndefined();
    expect(await refused(`${hold()}; ${mine}`)).toBe(check);
    expect(await refused(`${hold({ sensor: null })}; ${mine}`)).toBe(check);
    expect(await refused(`${hold({ sensor: null })}; ${load(world.b.sensorId)}`)).toBeUndefined();
    expect(await refused(`${hold()}; ${release("go-on")}; ${mine}`)).toBeUndefined();
    expect(await refused(`${hold()}; ${release("return-unmeasured")}; ${mine}`)).toBe(check);
  });

  it("leaves its sensor's place to another only of one sensor that goes back and has no certificate", async () => {
    const waits = (outcome: string) =>
      release(outcome)
        .replace("released_by_id,", "awaits_another, released_by_id,")
        .replace(`'${world.technicianId}', now())`, `true, '${world.technicianId}', now())`);
    expect(await refused(`${hold()}; ${waits("return-unmeasured")}`), "certified").toBe(check);
    // Without a certificate of its own the same is let through: a second sensor of the line.
    const another = `INSERT INTO sensor (id, tag, customer_id, order_line_id, serial, type_letter, construction, protection)
      SELECT '${id(5)}', 'T-9', customer_id, order_line_id, 'S-9', type_letter, construction, protection
        FROM sensor WHERE id = '${world.a.sensorId}'`;
    const onIt = `${another}; ${hold({ sensor: id(5) })}`;
    expect(await refused(`${onIt}; ${waits("return-unmeasured")}`)).toBeUndefined();
    expect(await refused(`${onIt}; ${waits("go-on")}`)).toBe(check);
    expect(await refused(`${hold({ sensor: null })}; ${waits("return-unmeasured")}`)).toBe(check);
  });

  it("keeps its sensor from a certificate", async () => {
    const before = await refused(certificate(world.a.sensorId));
    expect(before).not.toBe(check);
    expect(await refused(`${hold()}; ${certificate(world.a.sensorId)}`)).toBe(check);
  });

  it("stands on a sensor of its own order, and of nonconforming work only with that", async () => {
    expect(await refused(hold({ order: world.b.orderId }))).toBeDefined();
    expect(await refused(hold().replace("'condition'", "'nonconforming-work'"))).toBe(check);
  });

  it("does not end before the answer, nor without the disclaimer of who insists", async () => {
    const ask = `INSERT INTO question (id, customer_id, order_id, sensor_id, hold_id, text, asked_by_id, asked_at)
      VALUES ('${id(2)}', '${world.a.customerId}', '${world.a.orderId}', '${world.a.sensorId}', '${id(1)}', 'Go on?', '${world.technicianId}', now())`;
    const answer = (
      insists: boolean,
    ) => `INSERT INTO answer (question_id, customer_id, choice, insists, came_by, said_by_name, said_at)
      VALUES ('${id(2)}', '${world.a.customerId}', 'yes', ${insists}, 'desk', 'C', now())`;
    expect(await refused(`${hold()}; ${ask}; ${release("go-on")}`)).toBe(check);
    expect(await refused(`${hold()}; ${ask}; ${answer(false)}; ${release("go-on")}`)).toBeUndefined();
    expect(await refused(`${hold()}; ${ask}; ${answer(true)}; ${release("go-on")}`)).toBe(check);
    expect(
      await refused(`${hold()}; ${ask}; ${answer(true)}; ${release("go-on-with-disclaimer")}`),
    ).toBeUndefined();
  });
});

describe("custody", () => {
  const move = (kind: string, more = "") =>
    `INSERT INTO custody_event (sensor_id, customer_id, kind, condition, recorded_by_id, happened_at)
     VALUES ('${world.a.sensorId}', '${world.a.customerId}', '${kind}', '${more}', '${world.technicianId}', now())`;

  it("names the place of storage, and on whose word a sensor was disposed of", async () => {
    expect(await refused(move("stored"))).toBe(check);
    expect(await refused(move("disposed"))).toBe(check);
    expect(await refused(move("disposed", "the customer wrote so"))).toBeUndefined();
  });

  it("ends where the sensor left the house", async () => {
    expect(await refused(`${move("handed-over")}; ${move("to-furnace")}`)).toBe(check);
    expect(await refused(`${move("disposed", "told")}; ${move("handed-over")}`)).toBe(check);
    expect(
      await refused(`${move("to-furnace")}; ${move("from-furnace")}; ${move("packed")}`),
    ).toBeUndefined();
  });
});

describe("nonconforming work", () => {
  const other = () =>
    `(SELECT id FROM person WHERE customer_id IS NULL AND id <> '${world.technicianId}' LIMIT 1)`;
  const open = (state = "open") =>
    `INSERT INTO nonconformity (id, number, kind, state, title, description, subject_kind, subject_name, opened_by_id, opened_at)
     VALUES ('${id(3)}', 'N-9', 'nonconforming-work', '${state}', 't', 'd', 'laboratory', 'the laboratory', ${other()}, now())`;
  const say = (kind: string, who = `'${world.technicianId}'`) =>
    `INSERT INTO nonconformity_entry (nonconformity_id, kind, text, said_by_id, said_at) VALUES ('${id(3)}', '${kind}', 't', ${who}, now())`;
  const become = (state: string) => `UPDATE nonconformity SET state = '${state}' WHERE id = '${id(3)}'`;
  const third = `INSERT INTO person (id, email, name, password_hash) VALUES ('${id(4)}', 'x@y.example', 'X', 'x')`;
  const corrected = () =>
    [third, open(), say("effect"), become("examined"), say("correction"), become("corrected")].join("; ");

  beforeAll(async () => {
    await admin.query(
      `INSERT INTO person (email, name, password_hash) VALUES ('second@laboratory.example', 'Second', 'x')`,
    );
  });

  it("begins open and goes step by step, each with what was found", async () => {
    expect(await refused(open("closed"))).toBe(check);
    expect(await refused(`${open()}; ${become("examined")}`)).toBe(check);
    expect(await refused(`${open()}; ${say("effect")}; ${become("corrected")}`)).toBe(check);
    expect(await refused(`${open()}; ${say("effect")}; ${become("examined")}; ${become("corrected")}`)).toBe(
      check,
    );
    expect(await refused(corrected())).toBeUndefined();
    expect(await refused(`${corrected()}; ${become("closed")}`)).toBe(check);
  });

  it("is closed by somebody else than who reported or corrected it", async () => {
    expect(await refused(`${corrected()}; ${say("closed")}`)).toBe(check);
    expect(await refused(`${corrected()}; ${say("closed", other())}`)).toBe(check);
    expect(await refused(`${corrected()}; ${say("closed", "NULL")}`)).toBe(check);
    const closed = `${corrected()}; ${say("closed", `'${id(4)}'`)}; ${become("closed")}`;
    expect(await refused(closed)).toBeUndefined();
    expect(await refused(`${closed}; ${say("correction")}`)).toBe(check);
    expect(await refused(`${closed}; ${become("open")}`)).toBe(check);
    expect(await refused(`${closed}; ${say("reopened")}; ${become("open")}`)).toBeUndefined();
  });

  it("keeps what was reported as it was said", async () => {
    expect(await refused(`${open()}; UPDATE nonconformity SET title = 'x' WHERE id = '${id(3)}'`)).toBe(
      "23001",
    );
  });

  it("lets work resume only where that was authorised, and is not closed while it waits", async () => {
    const stopped = `${open()}; ${hold({ nonconformity: id(3) })}`;
    expect(await refused(`${stopped}; ${release("go-on")}`)).toBe(check);
    expect(await refused(`${stopped}; ${say("resumed")}; ${release("go-on")}`)).toBeUndefined();
    const waiting = `${corrected()}; ${hold({ nonconformity: id(3) })}; ${say("closed", `'${id(4)}'`)}`;
    expect(await refused(waiting)).toBe(check);
  });
});
