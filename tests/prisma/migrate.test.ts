import { createHash } from "node:crypto";
import pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Migration, migrate, readMigrations } from "@/prisma/migrate";
import { type TestDatabase, testDatabase } from "../support/database";

let database: TestDatabase;

beforeAll(async () => {
  database = await testDatabase();
});
afterAll(() => database.drop());

function migration(name: string, sql: string): Migration {
  return { name, sql, checksum: createHash("sha256").update(sql).digest("hex") };
}

async function query(sql: string): Promise<pg.QueryResult> {
  const client = new pg.Client({ connectionString: database.adminUrl });
  await client.connect();
  return client.query(sql).finally(() => client.end());
}

const run = (added: readonly Migration[]) =>
  migrate({ databaseUrl: database.adminUrl, log: () => {}, migrations: [...readMigrations(), ...added] });

describe("migrate", () => {
  const first = migration("9000_first", "CREATE TABLE first (id int); INSERT INTO first VALUES (1);");

  it("has nothing to do in a migrated database", async () => {
    expect(await run([])).toBe(0);
  });

  it("applies a new one as the owner and writes it down as Prisma would", async () => {
    expect(await run([first])).toBe(1);
    expect(await run([first])).toBe(0);
    const { rows } = await query(
      "SELECT checksum, applied_steps_count, finished_at IS NOT NULL AS done FROM _prisma_migrations WHERE migration_name = '9000_first'",
    );
    expect(rows).toEqual([{ checksum: first.checksum, applied_steps_count: 1, done: true }]);
    const owner = await query("SELECT tableowner FROM pg_tables WHERE tablename = 'first'");
    expect(owner.rows).toEqual([{ tableowner: "emfolio_owner" }]);
  });

  it("leaves nothing of one that fails, and names it and the line", async () => {
    const broken = migration("9001_broken", "CREATE TABLE half (id int);\nSELECT nonsense;");
    await expect(run([first, broken])).rejects.toThrow(
      /^The migration 9001_broken failed .*nonsense.* \(line 2\)$/,
    );
    expect((await query("SELECT to_regclass('half') AS half")).rows).toEqual([{ half: null }]);
  });

  it("refuses a database whose applied migration was changed since", async () => {
    const changed = migration("9000_first", "CREATE TABLE first (id bigint);");
    await expect(run([changed])).rejects.toThrow(/9000_first was changed after it had been applied/);
  });

  it("refuses a database that a newer version has used", async () => {
    await expect(run([])).rejects.toThrow(/9000_first, which this version does not know/);
  });

  it("lets two starts at once apply each migration once", async () => {
    const more = [first, migration("9002_more", "CREATE TABLE more (id int);")];
    expect((await Promise.all([run(more), run(more)])).sort()).toEqual([0, 1]);
  });
});
