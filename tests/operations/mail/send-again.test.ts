import { randomUUID } from "node:crypto";
import type pg from "pg";
import { afterAll, beforeAll, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { type Carrier, deliver } from "@/lib/operations/mail/deliver";
import { sendAgain } from "@/lib/operations/mail/send-again";
import { jobOf, letter, publicUrl, write } from "../../jobs/mail-world";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { workOff } from "../../support/work-off";

let database: TestDatabase;
let admin: pg.Client;
let world: World;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
});
afterAll(async () => {
  await closeDatabase();
  await admin?.end();
  await database?.drop();
});

const clock = () => new Date("2026-03-02T09:00:00Z");
const again = (actor: Actor, mailMessageId: string) => execute(sendAgain, actor, { mailMessageId }, clock);
const carried: string[] = [];
const carrier: Carrier = {
  kind: "file",
  carry: async ({ id }) => {
    carried.push(id);
    return `${id}.eml`;
  },
};
const broken: Carrier = { kind: "smtp", carry: () => Promise.reject(new Error("550 no")) };
const work = (by: Carrier) => workOff(database.jobsUrl, { carrier: by, publicUrl, clock });

it("tries a message that was given up at once and afresh, and says who asked", async () => {
  const id = await write(letter());
  await admin.query("UPDATE graphile_worker._private_jobs SET max_attempts = 1");
  await work(broken);
  expect(await jobOf(admin, id)).toMatchObject({ attempts: 1 });
  await work(carrier);
  expect(carried).toEqual([]); // given up: it does not come back by itself
  await again(world.people.quality, id);
  expect(await jobOf(admin, id)).toMatchObject({ attempts: 0, waits: false, last_error: null });
  await work(carrier);
  expect(carried).toEqual([id]);
  const { rows } = await admin.query(
    "SELECT action, actor_id FROM audit_event WHERE entity_id = $1 ORDER BY sequence",
    [id],
  );
  expect(rows).toEqual([
    { action: "mail.failed", actor_id: "system:mail" },
    { action: "mail.sent-again", actor_id: world.people.quality.personId },
    { action: "mail.sent", actor_id: "system:mail" },
  ]);
});

it("refuses a message that was sent, one that is not there, and whoever may not", async () => {
  const id = await write(letter());
  await deliver(id, carrier, false, clock);
  await expect(again(world.people.quality, id)).rejects.toMatchObject({ refusal: { code: "wrong-state" } });
  await expect(again(world.people.quality, randomUUID())).rejects.toMatchObject({
    refusal: { code: "not-found" },
  });
  await expect(again(world.people.technician, id)).rejects.toMatchObject({
    refusal: { code: "not-permitted" },
  });
});
