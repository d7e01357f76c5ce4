import type pg from "pg";
import { afterAll, beforeAll, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { smtpCarrier } from "@/lib/jobs/smtp-carrier";
import { remindOfDue } from "@/lib/operations/reminder/remind-of-due";
import { buildWorld, type World } from "../support/build-world";
import { type TestDatabase, testDatabase } from "../support/database";
import { type SmtpServer, startSmtpServer } from "../support/smtp-server";
import { workOff } from "../support/work-off";
import { acceptAll } from "./accept-all";
import { publicUrl } from "./mail-world";

// One laboratory's year and a half, in order: each test goes on where the one before it stopped.
// Its five calibrations are due on 2027-01-10, its characterisation is valid until 2027-02-01.

let database: TestDatabase;
let admin: pg.Client;
let server: SmtpServer;
let world: World;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  configureDatabase(database.runtimeUrl);
  server = await startSmtpServer();
  world = await buildWorld();
  await acceptAll(admin, world.people.signatory.personId);
});
afterAll(async () => {
  await closeDatabase();
  await admin?.end();
  await server?.close();
  await database?.drop();
});

/** What the worker does on that day: asks, and sends what it is told to send. Returns what arrived. */
const day = async (today: string): Promise<readonly string[]> => {
  const before = server.messages.length;
  await admin.query("SELECT graphile_worker.add_job('due-reminders', job_key => 'due-reminders')");
  const carrier = smtpCarrier(server.url, "laboratory@calibration.example");
  await workOff(database.jobsUrl, { carrier, publicUrl, clock: () => new Date(`${today}T05:00:00Z`) });
  return server.messages.slice(before);
};
const plain = (message: string | undefined): string => (message ?? "").replaceAll("=\r\n", "");
const setState = (id: string, state: string) =>
  admin.query("UPDATE equipment SET state = $2 WHERE id = $1", [id, state]);
const recalibrate = (equipmentId: string, certificate: string, performedOn: string, dueOn: string) =>
  inScope({ kind: "laboratory" }, (tx) =>
    tx.calibration.create({
      data: {
        ...{ equipmentId, certificate, issuer: "Invented National Institute", route: "nmi" },
        performedOn: new Date(performedOn),
        dueOn: new Date(dueOn),
        findings: "{}",
        recordedAt: new Date(`${performedOn}T12:00:00Z`),
      },
    }),
  );
const rows = async (sql: string) => (await admin.query(sql)).rows;

it("says nothing while everything is in date", async () => {
  expect(await day("2026-12-10")).toEqual([]);
  expect(await rows("SELECT * FROM reminder")).toEqual([]);
});

it("writes nothing while there is no quality manager to tell", async () => {
  await admin.query("UPDATE person SET active = false WHERE id = $1", [world.people.quality.personId]);
  expect(await day("2026-12-11")).toEqual([]);
  expect(await rows("SELECT * FROM reminder")).toEqual([]);
  await admin.query("UPDATE person SET active = true WHERE id = $1", [world.people.quality.personId]);
});

it("tells the quality managers in one message what comes due, and nobody else", async () => {
  await setState(world.junction.id, "retired");
  const [message, ...others] = (await day("2026-12-12")).map(plain);
  expect(others).toEqual([]);
  expect(message).toContain("To: quinn.quality@example.test\r\n");
  expect(message).toContain("Subject: Equipment and furnaces: 4 due within 30 days\r\n");
  expect(message).toContain("- R-S1, calibration: due on 2027-01-10\r\n");
  expect(message).toContain(`https://calibration.example/standards/${world.references[0].id}\r\n`);
  expect(message).not.toMatch(/J-1|out of date:|Invented|North|example\.test.*example\.test/);
  expect(
    await rows(
      "SELECT due_kind, stage, count(*)::int, count(DISTINCT digest_id)::int AS digests FROM reminder GROUP BY 1, 2",
    ),
  ).toEqual([{ due_kind: "calibration", stage: "due", count: 4, digests: 1 }]);
  expect(
    await rows("SELECT action FROM audit_event WHERE action ~ '^(mail|reminder)' ORDER BY sequence"),
  ).toEqual([{ action: "reminder.told" }, { action: "mail.sent" }]);
});

it("tells it once", async () => {
  expect(await day("2026-12-12")).toEqual([]);
  expect(await day("2026-12-31")).toEqual([]);
});

it("counts a new calibration from the day a second person has accepted it", async () => {
  await recalibrate(world.references[0].id, "CAL-R-S1-2", "2027-01-04", "2028-01-04");
  const [message] = (await day("2027-01-05")).map(plain);
  // Not accepted: it is still the old one that counts. New that day is the characterisation.
  expect(message).toContain("- F-1, Block of six, characterisation: due on 2027-02-01\r\n");
  expect(message).not.toContain("R-S1");
  await acceptAll(admin, world.people.signatory.personId);
});

it("tells the next stage, of what was not dealt with", async () => {
  const [message, ...others] = (await day("2027-01-11")).map(plain);
  expect(others).toEqual([]);
  expect(message).toContain("Subject: Equipment and furnaces: 3 out of date\r\n");
  for (const tag of ["R-S2", "V-1", "X-1"])
    expect(message).toContain(`- ${tag}, calibration: was due on 2027-01-10\r\n`);
  expect(message).not.toMatch(/R-S1|F-1/);
  expect(await day("2027-01-12")).toEqual([]);
});

it("begins anew with a new due day", async () => {
  expect(await day("2027-02-02")).toHaveLength(1); // the characterisation is out of date
  expect(await day("2027-12-04")).toEqual([]);
  const [message] = (await day("2027-12-05")).map(plain);
  expect(message).toContain("Subject: Equipment and furnaces: 1 due within 30 days\r\n");
  expect(message).toContain("- R-S1, calibration: due on 2028-01-04\r\n");
});

it("reminds of checks and maintenance, counted from the last that did not fail", async () => {
  const [, second] = world.references;
  await admin.query(
    "UPDATE equipment SET check_interval_days = 90, maintenance_interval_days = 365, received_on = '2027-01-20' WHERE id = $1",
    [world.voltmeter.id],
  );
  await admin.query("UPDATE equipment SET check_interval_days = 90 WHERE id = $1", [second.id]);
  const entry = (kind: string, happenedOn: string, outcome: string) =>
    admin.query(
      `INSERT INTO equipment_entry (equipment_id, kind, happened_on, outcome, summary, recorded_at)
       VALUES ($1, $2, $3, $4, 'invented', now())`,
      [world.voltmeter.id, kind, happenedOn, outcome],
    );
  await entry("intermediate-check", "2027-10-01", "passed");
  await entry("intermediate-check", "2027-12-01", "failed");
  const [message] = (await day("2027-12-22")).map(plain);
  expect(message).toContain("- V-1, intermediate check: due on 2027-12-30\r\n");
  expect(message).toContain("- V-1, maintenance: due on 2028-01-20\r\n");
  // Never checked: the calibration of 2026-01-10 was the last look at it.
  expect(message).toContain("- R-S2, intermediate check: was due on 2026-04-10\r\n");
  await entry("intermediate-check", "2027-12-23", "passed");
  expect(await day("2027-12-31")).toEqual([]);
});

it("tells once when two ask at the same moment", async () => {
  const clock = () => new Date("2028-01-05T05:00:00Z");
  const outcomes = await Promise.allSettled([remindOfDue(publicUrl, clock), remindOfDue(publicUrl, clock)]);
  const told = outcomes.filter((outcome) => outcome.status === "fulfilled" && outcome.value !== undefined);
  expect(told).toEqual([{ status: "fulfilled", value: { things: 1, messages: 1 } }]);
  expect(
    await rows(
      "SELECT count(*)::int FROM mail_message WHERE enqueued_at = '2028-01-05T05:00:00Z' AND subject ~ '1 out of date'",
    ),
  ).toEqual([{ count: 1 }]);
  expect(await day("2028-01-05")).toHaveLength(1); // the message that was waiting
});

it("is refused by the database a second time, whoever asks", async () => {
  await expect(
    admin.query(
      `INSERT INTO reminder (due_kind, subject_id, due_on, stage, digest_id, reminded_at)
       SELECT due_kind, subject_id, due_on, stage, gen_random_uuid(), now() FROM reminder LIMIT 1`,
    ),
  ).rejects.toMatchObject({ code: "23505" });
});
