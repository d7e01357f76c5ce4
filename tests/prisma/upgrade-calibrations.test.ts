import { randomBytes } from "node:crypto";
import type pg from "pg";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { changeUrl, connect } from "@/lib/commands/postgres/connect";
import { prepareDatabase } from "@/lib/commands/postgres/roles";
import { migrate, readMigrations } from "@/prisma/migrate";

// A database as the version before acceptance left it, with certificates in use.
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

it("what was in use before acceptance and approval were asked for stays in use, and says so", async () => {
  const before = readMigrations().filter(({ name }) => name < "0005");
  await client.query(`GRANT CREATE ON DATABASE ${database} TO emfolio_owner`);
  await migrate({ databaseUrl: adminUrl, log: () => {}, migrations: before });
  await client.query(
    `WITH thing AS (
       INSERT INTO equipment (tag, kind, maker, model, serial, state, particulars)
       VALUES ('V-1', 'voltmeter', 'M', 'X', '1', 'in-service', '{}'), ('S-1', 'scanner', 'M', 'X', '2', 'in-service', '{}')
       RETURNING id, tag)
     INSERT INTO calibration (equipment_id, certificate, issuer, accreditation, route, performed_on, due_on, findings, recorded_at)
     SELECT id, 'C-' || tag, CASE tag WHEN 'V-1' THEN 'Institute' ELSE 'Ourselves' END, '',
            CASE tag WHEN 'V-1' THEN 'nmi' ELSE 'in-house' END, '2026-01-10', '2027-01-10', '{}', '2026-01-12T08:00:00Z'
       FROM thing`,
  );
  await prepareDatabase(client);
  await migrate({ databaseUrl: adminUrl, log: () => {} });
  await client.query("BEGIN; SET LOCAL app.scope = 'laboratory'; SET LOCAL ROLE emfolio_runtime");
  const grounds = async (moment: string) =>
    (
      await client.query(
        "SELECT tag, use_ground(id, $1) AS ground FROM equipment WHERE kind <> 'furnace' ORDER BY tag",
        [moment],
      )
    ).rows.map(({ tag, ground }) => [tag, ground]);
  expect(await grounds("2026-06-01T08:00:00Z")).toEqual([
    ["S-1", null],
    ["V-1", null],
  ]);
  expect(await grounds("2027-01-11T08:00:00Z")).toEqual([
    ["S-1", "not-in-date"],
    ["V-1", "not-in-date"],
  ]);
  const { rows: decisions } = await client.query(
    "SELECT DISTINCT decision, reason, decided_by_id, decided_at FROM calibration_decision",
  );
  expect(decisions).toEqual([
    {
      decision: "accepted",
      reason: "recorded before a second person was asked for",
      decided_by_id: null,
      decided_at: new Date("2026-01-12T08:00:00Z"),
    },
  ]);
  const { rows: providers } = await client.query("SELECT name, route, state, scope, note FROM provider");
  expect(providers).toEqual([
    {
      name: "Institute",
      route: "nmi",
      state: "approved",
      scope: '[{"kind" : "voltmeter", "range" : ""}]',
      note: expect.stringContaining("approve it anew"),
    },
  ]);
  await client.query("ROLLBACK");
});
