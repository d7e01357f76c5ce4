import { randomBytes } from "node:crypto";
import type pg from "pg";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { changeUrl, connect } from "@/lib/commands/postgres/connect";
import { ensureQueue } from "@/lib/commands/postgres/queue-schema";
import { prepareDatabase } from "@/lib/commands/postgres/roles";
import { migrate, readMigrations } from "@/prisma/migrate";

// A database as the version before the job queue left it: never given to the queue's role, with rows in it.
const database = `test_${randomBytes(8).toString("hex")}`;
const adminUrl = changeUrl(inject("template").adminUrl, { database });
let client: pg.Client;

const onServer = async (sql: string) => {
  const server = await connect(inject("template").adminUrl);
  await server.query(sql).finally(() => server.end());
};

beforeAll(async () => {
  await onServer(`CREATE DATABASE ${database} OWNER emfolio_owner`);
  client = await connect(adminUrl);
});
afterAll(async () => {
  await client?.end();
  await onServer(`DROP DATABASE IF EXISTS ${database} WITH (FORCE)`);
});

it("brings a database of before the job queue to now, and again does nothing", async () => {
  const before = readMigrations().filter(({ name }) => name < "0007");
  await client.query(`GRANT CREATE ON DATABASE ${database} TO emfolio_owner`);
  await migrate({ databaseUrl: adminUrl, log: () => {}, migrations: before });
  await client.query("INSERT INTO laboratory (name, address_lines, contact) VALUES ('L', '1 Street', 'C')");
  await client.query(
    `INSERT INTO furnace (tag, name, maker, serial, minimum_celsius, maximum_celsius, bore_millimetre, length_millimetre)
     VALUES ('F-1', 'Tube', 'Maker', '7', 200, 1200, 40, 900)`,
  );

  for (const applied of [readMigrations().length - before.length, 0]) {
    await prepareDatabase(client);
    expect(await migrate({ databaseUrl: adminUrl, log: () => {} })).toBe(applied);
    await ensureQueue(adminUrl);
  }
  const { rows } = await client.query(
    "SELECT DISTINCT pg_get_userbyid(relowner) AS owner FROM pg_class WHERE relnamespace = 'graphile_worker'::regnamespace",
  );
  expect(rows).toEqual([{ owner: "emfolio_jobs" }]);
  await client.query("BEGIN; SET LOCAL app.scope = 'laboratory'; SET LOCAL ROLE emfolio_runtime");
  await client.query("SELECT jobs.enqueue('send-mail', 'key', '{}')");
  expect((await client.query("SELECT name FROM laboratory")).rows).toEqual([{ name: "L" }]);
  // A furnace of before has its row among the equipment, in use as it was.
  const furnaces = await client.query(
    "SELECT e.tag, e.kind, e.state, e.serial FROM furnace f JOIN equipment e ON e.id = f.equipment_id",
  );
  expect(furnaces.rows).toEqual([{ tag: "F-1", kind: "furnace", state: "in-service", serial: "7" }]);
  await client.query("ROLLBACK");
});

it("prepares the queue from two starts at once", async () => {
  await Promise.all([ensureQueue(adminUrl), ensureQueue(adminUrl)]);
  await client.query("DROP SCHEMA graphile_worker CASCADE");
  await Promise.all([ensureQueue(adminUrl), ensureQueue(adminUrl)]);
  const { rows } = await client.query("SELECT max(id) AS version FROM graphile_worker.migrations");
  expect(rows[0].version).toBeGreaterThanOrEqual(19);
});
