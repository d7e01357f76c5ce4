import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { evidence, someColumn } from "./append-only-tables";
import { insufficientPrivilege, refusalCode } from "./refusal-code";
import { type TwoCustomers, twoCustomers } from "./two-customers";

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

const count = async (table: string): Promise<number> =>
  Number((await admin.query(`SELECT count(*) FROM ${table}`)).rows[0].count);

describe.each(evidence)("%s", (table) => {
  const changes = () => [
    `UPDATE ${table} SET ${someColumn[table]}`,
    `DELETE FROM ${table}`,
    `TRUNCATE ${table} CASCADE`,
  ];

  it("has rows to lose", async () => {
    expect(await count(table)).toBeGreaterThan(0);
  });

  it("refuses the product every change, and every way around it", async () => {
    const ways = [
      ...changes(),
      `SELECT * FROM ${table} FOR UPDATE`,
      `ALTER TABLE ${table} DISABLE TRIGGER ALL`,
      `ALTER TABLE ${table} DISABLE TRIGGER refuse_change`,
      `DROP TRIGGER refuse_change ON ${table}`,
      `ALTER TABLE ${table} DISABLE ROW LEVEL SECURITY`,
      `ALTER TABLE ${table} NO FORCE ROW LEVEL SECURITY`,
      `CREATE POLICY mine ON ${table} USING (true)`,
      `ALTER TABLE ${table} ADD COLUMN extra text`,
      `ALTER TABLE ${table} OWNER TO CURRENT_USER`,
      `CREATE RULE mine AS ON INSERT TO ${table} DO INSTEAD NOTHING`,
      `CREATE TRIGGER mine BEFORE INSERT ON ${table} FOR EACH ROW EXECUTE FUNCTION refuse_change()`,
      `DROP TABLE ${table} CASCADE`,
    ];
    for (const way of ways)
      expect([way, await refusalCode(runtime, way)]).toEqual([way, insufficientPrivilege]);
  });

  it("refuses a superuser too, in replica mode as well, as long as the triggers stand", async () => {
    for (const mode of ["origin", "replica"])
      for (const change of changes()) {
        const way = `SET LOCAL session_replication_role = ${mode}; ${change}`;
        expect([way, await refusalCode(admin, way)]).toEqual([way, insufficientPrivilege]);
      }
  });

  it("shows its owner nothing to change", async () => {
    await admin.query("BEGIN; SET LOCAL ROLE emfolio_owner");
    try {
      const [update, remove] = changes();
      expect((await admin.query(update!)).rowCount).toBe(0);
      expect((await admin.query(remove!)).rowCount).toBe(0);
      await expect(admin.query(`TRUNCATE ${table} CASCADE`)).rejects.toMatchObject({
        code: insufficientPrivilege,
      });
    } finally {
      await admin.query("ROLLBACK");
    }
  });
});

it("knows every table that grants the product neither UPDATE nor DELETE", async () => {
  const { rows } = await admin.query(
    `SELECT relname FROM pg_class WHERE relkind = 'r' AND relnamespace = 'public'::regnamespace
       AND has_table_privilege('emfolio_runtime', oid, 'SELECT')
       AND NOT has_table_privilege('emfolio_runtime', oid, 'UPDATE')
       AND NOT has_any_column_privilege('emfolio_runtime', oid, 'UPDATE')
       AND NOT has_table_privilege('emfolio_runtime', oid, 'DELETE')`,
  );
  const others = ["audit_head", "certificate_pending", "sign_in_attempt"];
  expect(rows.map((row) => row.relname).sort()).toEqual([...evidence, ...others].sort());
});

describe("the product's sign-in", () => {
  it.each([
    "SET session_replication_role = replica",
    "SET ROLE emfolio_owner",
    "SET SESSION AUTHORIZATION emfolio_owner",
    "ALTER ROLE CURRENT_USER BYPASSRLS",
    "ALTER ROLE CURRENT_USER SUPERUSER",
    "GRANT emfolio_owner TO CURRENT_USER",
    // Granting what one has not only warns.
    "GRANT UPDATE ON result TO CURRENT_USER; UPDATE result SET point = '{}'",
    "INSERT INTO audit_event VALUES (2, 0, 'a', 'a', 'a', 'a', '{}', sha256(''), sha256(''))",
    "UPDATE audit_head SET sequence = sequence + 1",
    "DELETE FROM audit_head",
    "TRUNCATE audit_head",
    "SELECT * FROM audit_head FOR UPDATE",
    "UPDATE counter SET value = 7",
    "INSERT INTO counter VALUES ('mine', 7)",
    "SELECT * FROM counter",
    "SELECT * FROM _prisma_migrations",
    "DELETE FROM _prisma_migrations",
    "UPDATE person SET customer_id = NULL",
    "DELETE FROM person",
    "DELETE FROM customer",
    "DELETE FROM sign_in_attempt",
    "INSERT INTO certificate_pending SELECT id FROM certificate",
    "DELETE FROM certificate_pending",
    "CREATE TABLE mine ()",
    "CREATE TEMPORARY TABLE audit_head ()",
    "CREATE FUNCTION mine() RETURNS int LANGUAGE sql RETURN 1",
    "DROP FUNCTION next_number(text)",
    "ALTER FUNCTION next_number(text) SECURITY INVOKER",
    "COPY audit_event TO PROGRAM 'cat'",
  ])("may not: %s", async (statement) => {
    expect(await refusalCode(runtime, statement)).toBe(insufficientPrivilege);
  });

  it("may not become the superuser", async () => {
    const superuser = new URL(database.adminUrl).username;
    expect(await refusalCode(runtime, `SET ROLE ${superuser}`)).toBe(insufficientPrivilege);
    expect(await refusalCode(runtime, `SET SESSION AUTHORIZATION ${superuser}`)).toBe(insufficientPrivilege);
  });

  it("may not reach evidence by a cascade from a row it may change", async () => {
    const way = `UPDATE equipment SET id = gen_random_uuid() WHERE id = '${world.referenceId}'`;
    expect(await refusalCode(runtime, way)).toBe(insufficientPrivilege);
  });

  it("owns nothing", async () => {
    const { rows } = await runtime.query(
      `SELECT classid::regclass, objid FROM pg_shdepend WHERE deptype = 'o'
         AND refobjid IN ('emfolio_runtime'::regrole, CURRENT_USER::regrole)`,
    );
    expect(rows).toEqual([]);
  });

  it("is no superuser, passes no policy and makes no roles or databases", async () => {
    const { rows } = await runtime.query(
      `SELECT rolsuper, rolbypassrls, rolcreaterole, rolcreatedb, rolreplication FROM pg_roles WHERE rolname = CURRENT_USER`,
    );
    expect(Object.values(rows[0])).toEqual([false, false, false, false, false]);
  });
});

it("has every trigger of evidence enabled ALWAYS", async () => {
  const { rows } = await admin.query(
    `SELECT tgrelid::regclass::text AS of, tgname, tgenabled FROM pg_trigger WHERE NOT tgisinternal AND tgname IN ('refuse_change', 'refuse_truncate')`,
  );
  expect(rows.filter((row) => row.tgenabled !== "A")).toEqual([]);
  expect(new Set(rows.map((row) => row.of))).toEqual(new Set([...evidence, "audit_head"]));
  expect(rows).toHaveLength(2 * (evidence.length + 1));
});

it("runs what has the owner's rights with a fixed search path, and not for everybody", async () => {
  const { rows } = await admin.query(
    `SELECT proname, prosecdef, proconfig::text AS config, proacl::text AS acl FROM pg_proc
       WHERE pronamespace = 'public'::regnamespace AND proowner = 'emfolio_owner'::regrole`,
  );
  const definers = rows.filter((row) => row.prosecdef).map((row) => row.proname);
  expect(definers.sort()).toEqual([
    ...["audit_append", "authenticity", "mark_made", "mark_pending", "next_number"],
    "sensors_with_serial_part",
  ]);
  for (const row of rows) {
    expect([row.proname, row.config]).toEqual([row.proname, '{"search_path=pg_catalog, pg_temp"}']);
    // An entry that begins with "=" is a grant to PUBLIC.
    expect([row.proname, row.acl]).toEqual([row.proname, expect.not.stringMatching(/[{,]=/)]);
  }
});
