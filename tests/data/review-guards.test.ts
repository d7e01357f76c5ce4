import type pg from "pg";
import { afterAll, beforeAll, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { copiedCertificate } from "./copied-certificate";
import { refusalCode } from "./refusal-code";
import { type TwoCustomers, twoCustomers } from "./two-customers";

/** The last defence of the review: it speaks of what is there, and an open remark stops its sensor. */

let database: TestDatabase;
let admin: pg.Client;
let runtime: pg.Client;
let world: TwoCustomers;

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

const check = "23514"; // check_violation
const refused = (sql: string) => refusalCode(runtime, sql);
const of = () => `'${world.sharedRun.id}', '${world.sharedRun.evaluationId}'`;

const opening = (more: { evaluation?: string; setpoint?: string } = {}) =>
  `INSERT INTO review_opening (run_id, evaluation_id, sensor_id, setpoint_id, opened_by_id, opened_at)
   VALUES ('${world.sharedRun.id}', '${more.evaluation ?? world.sharedRun.evaluationId}', '${world.a.sensorId}',
           '${more.setpoint ?? world.sharedRun.setpointId}', '${world.a.personId}', now())`;
const remark = (sensor: string | null, more: { answers?: string; settles?: boolean; place?: string } = {}) =>
  `INSERT INTO review_comment (id, run_id, evaluation_id, sensor_id, place, answers_id, settles, text, written_by_id, written_at)
   VALUES (${more.answers ? "default" : "900"}, ${of()}, ${sensor ? `'${sensor}'` : "NULL"}, '${more.place ?? "error"}',
           ${more.answers ?? "NULL"}, ${more.settles ?? false}, 'look', '${world.technicianId}', now())`;
const certificate = () =>
  copiedCertificate(
    "jsonb_build_object('id', gen_random_uuid(), 'number', 'C-X', 'token', repeat('x', 43))",
    `WHERE c.sensor_id = '${world.a.sensorId}' LIMIT 1`,
  );

it("keeps openings to results of the evaluation they name, and the lot to its run", async () => {
  expect(await refused(opening())).toBeUndefined();
  expect(await refused(opening({ evaluation: world.runOfB.evaluationId }))).toBe(check);
  expect(await refused(opening({ setpoint: world.runOfB.setpointId }))).toBe(check);
  expect(
    await refused(
      `INSERT INTO review_sample (evaluation_id, run_id, seed, drawn_at)
       VALUES ('${world.runOfB.evaluationId}', '${world.sharedRun.id}', decode(repeat('00', 32), 'hex'), now())`,
    ),
  ).toBe(check);
});

it("keeps a remark to what is there, and an answer to an open remark at the same number", async () => {
  const mine = remark(world.a.sensorId);
  expect(await refused(mine)).toBeUndefined();
  const { sharedRun, runOfB } = world;
  expect(await refused(mine.replace(sharedRun.evaluationId, runOfB.evaluationId))).toBe(check);
  // The other run has no result of this customer's sensor.
  expect(await refused(mine.replace(of(), `'${runOfB.id}', '${runOfB.evaluationId}'`))).toBe(check);
  const answer = remark(world.a.sensorId, { answers: "900", settles: true });
  expect(await refused(`${mine}; ${answer}`)).toBeUndefined();
  expect(await refused(`${mine}; ${answer}; ${answer}`)).toBe(check);
  expect(await refused(`${mine}; ${remark(world.a.sensorId, { answers: "900", place: "emf" })}`)).toBe(check);
  expect(await refused(`${mine}; ${remark(null, { answers: "900" })}`)).toBe(check);
});

it("certifies no sensor past an open remark on it or on its run", async () => {
  expect(await refused(certificate())).toBeUndefined();
  const settle = (sensor: string | null) => remark(sensor, { answers: "900", settles: true });
  for (const sensor of [world.a.sensorId, null]) {
    expect(await refused(`${remark(sensor)}; ${certificate()}`)).toBe(check);
    expect(await refused(`${remark(sensor)}; ${settle(sensor)}; ${certificate()}`)).toBeUndefined();
  }
  expect(await refused(`${remark(world.b.sensorId)}; ${certificate()}`)).toBeUndefined();
});
