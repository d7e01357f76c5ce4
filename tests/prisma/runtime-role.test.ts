import pg from "pg";
import { afterAll, beforeAll, expect, it } from "vitest";
import { type TestDatabase, testDatabase } from "../support/database";

let database: TestDatabase;
let runtime: pg.Client;

beforeAll(async () => {
  database = await testDatabase();
  runtime = new pg.Client({ connectionString: database.runtimeUrl });
  await runtime.connect();
});
afterAll(async () => {
  await runtime.end();
  await database.drop();
});

it("owns nothing and may make nothing", async () => {
  const { rows } = await runtime.query(
    "SELECT rolsuper, rolcreatedb, rolcreaterole, rolbypassrls FROM pg_roles WHERE rolname = CURRENT_USER",
  );
  expect(rows).toEqual([{ rolsuper: false, rolcreatedb: false, rolcreaterole: false, rolbypassrls: false }]);
  await expect(runtime.query("CREATE TABLE mine (id int)")).rejects.toThrow(/permission denied/);
  await expect(runtime.query("CREATE TEMPORARY TABLE mine (id int)")).rejects.toThrow(/permission denied/);
  await expect(runtime.query("SET ROLE emfolio_owner")).rejects.toThrow(/permission denied/);
  await expect(runtime.query("SELECT * FROM _prisma_migrations")).rejects.toThrow(/permission denied/);
});
