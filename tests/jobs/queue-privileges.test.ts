import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { insufficientPrivilege, refusalCode } from "../data/refusal-code";
import { type TestDatabase, testDatabase } from "../support/database";

let database: TestDatabase;
let admin: pg.Client;
let runtime: pg.Client;
let jobs: pg.Client;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  runtime = await connect(database.runtimeUrl);
  jobs = await connect(database.jobsUrl);
});
afterAll(async () => {
  await Promise.all([admin?.end(), runtime?.end(), jobs?.end()]);
  await database?.drop();
});

const named = async (sql: string): Promise<readonly string[]> =>
  (await admin.query<{ name: string }>(sql)).rows.map(({ name }) => name);

describe("the product's sign-in", () => {
  it("may neither read nor write a table of the queue", async () => {
    const tables = await named(
      "SELECT format('%I.%I', schemaname, tablename) AS name FROM pg_tables WHERE schemaname = 'graphile_worker'",
    );
    expect(tables).toContain("graphile_worker._private_jobs");
    for (const table of tables)
      for (const way of [`SELECT * FROM ${table}`, `DELETE FROM ${table}`, `TRUNCATE ${table}`])
        expect([way, await refusalCode(runtime, way)]).toEqual([way, insufficientPrivilege]);
  });

  it("may call none of the queue's functions", async () => {
    const reachable = await named(
      `SELECT oid::regprocedure::text AS name FROM pg_proc WHERE pronamespace = 'graphile_worker'::regnamespace
         AND has_schema_privilege('emfolio_runtime', pronamespace, 'USAGE')`,
    );
    expect(reachable).toEqual([]);
    const way = "SELECT graphile_worker.add_job('send-mail')";
    expect(await refusalCode(runtime, way)).toBe(insufficientPrivilege);
  });

  it("finds one function beside it, and may not change it", async () => {
    expect(
      await named("SELECT proname AS name FROM pg_proc WHERE pronamespace = 'jobs'::regnamespace"),
    ).toEqual(["enqueue"]);
    for (const way of [
      "DROP FUNCTION jobs.enqueue(text, text, text)",
      "ALTER FUNCTION jobs.enqueue(text, text, text) SECURITY INVOKER",
      "CREATE FUNCTION jobs.mine() RETURNS int LANGUAGE sql RETURN 1",
      "CREATE TABLE jobs.mine ()",
      "SET ROLE emfolio_jobs",
    ])
      expect([way, await refusalCode(runtime, way)]).toEqual([way, insufficientPrivilege]);
  });

  it("gives jobs in the laboratory's scope only", async () => {
    const give = "SELECT jobs.enqueue('send-mail', 'k', '{}')";
    for (const [scope, code] of [
      ["", insufficientPrivilege],
      ["customer", insufficientPrivilege],
      ["laboratory", undefined],
    ] as const)
      expect(await refusalCode(runtime, `SET LOCAL app.scope = '${scope}'; ${give}`)).toBe(code);
  });
});

describe("the worker's sign-in", () => {
  it("works the queue and sees nothing of the laboratory's", async () => {
    expect(await refusalCode(jobs, "SELECT * FROM graphile_worker._private_jobs")).toBeUndefined();
    const tables = await named(
      "SELECT format('%I', tablename) AS name FROM pg_tables WHERE schemaname = 'public'",
    );
    for (const table of tables)
      expect([table, await refusalCode(jobs, `SELECT * FROM ${table}`)]).toEqual([
        table,
        insufficientPrivilege,
      ]);
    for (const way of ["CREATE TABLE mine ()", "SET ROLE emfolio_owner", "SET ROLE emfolio_runtime"])
      expect([way, await refusalCode(jobs, way)]).toEqual([way, insufficientPrivilege]);
  });
});
