import { createHash, randomUUID } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import pg from "pg";
import { Failure, runCommand } from "@/lib/commands/failure";
import { connect } from "@/lib/commands/postgres/connect";
import { ownerRole } from "@/lib/commands/postgres/roles";

const folder = path.join(import.meta.dirname, "migrations");

/** Any constant will do, as long as every process that migrates uses the same one. */
const lockKey = "7021956410338211";

export type Migration = { readonly name: string; readonly sql: string; readonly checksum: string };

type MigrateOptions = {
  readonly databaseUrl: string;
  readonly log: (line: string) => void;
  readonly migrations?: readonly Migration[];
};

/**
 * Applies the migrations that the database does not have yet, in the order of their names, each in a transaction of
 * its own, and returns how many. Fills `_prisma_migrations` as Prisma's own tool does, so that a site that has that
 * tool can use it on the same database.
 */
export async function migrate(options: MigrateOptions): Promise<number> {
  const migrations = options.migrations ?? readMigrations();
  const client = await connect(options.databaseUrl);
  try {
    await client.query(`SELECT pg_advisory_lock(${lockKey})`);
    await client.query(`SET ROLE ${ownerRole}`);
    await client.query(bookkeeping);
    const pending = await pendingMigrations(client, migrations);
    for (const migration of pending) {
      await apply(client, migration);
      options.log(`Migration ${migration.name} applied`);
    }
    return pending.length;
  } finally {
    await client.end();
  }
}

export function readMigrations(from: string = folder): readonly Migration[] {
  if (!existsSync(from)) return [];
  const names = readdirSync(from, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  return names
    .map((entry) => entry.name)
    .sort()
    .map((name) => {
      const sql = readFileSync(path.join(from, name, "migration.sql"), "utf8");
      return { name, sql, checksum: createHash("sha256").update(sql).digest("hex") };
    });
}

const bookkeeping = `
  CREATE TABLE IF NOT EXISTS _prisma_migrations (
    id varchar(36) PRIMARY KEY NOT NULL,
    checksum varchar(64) NOT NULL,
    finished_at timestamptz,
    migration_name varchar(255) NOT NULL,
    logs text,
    rolled_back_at timestamptz,
    started_at timestamptz NOT NULL DEFAULT now(),
    applied_steps_count integer NOT NULL DEFAULT 0
  )`;

type Applied = {
  readonly migration_name: string;
  readonly checksum: string;
  readonly finished_at: Date | null;
};

async function pendingMigrations(
  client: pg.Client,
  migrations: readonly Migration[],
): Promise<readonly Migration[]> {
  const { rows } = await client.query<Applied>(
    "SELECT migration_name, checksum, finished_at FROM _prisma_migrations WHERE rolled_back_at IS NULL",
  );
  const known = new Map(migrations.map((migration) => [migration.name, migration]));
  for (const row of rows) {
    const migration = known.get(row.migration_name);
    if (migration === undefined) {
      throw new Failure(
        `The database has the migration ${row.migration_name}, which this version does not know: it was used by a newer version. Start that version instead.`,
      );
    }
    if (row.finished_at === null) {
      throw new Failure(
        `The migration ${row.migration_name} was begun by another tool and never finished; resolve it there first.`,
      );
    }
    if (row.checksum !== migration.checksum) {
      throw new Failure(
        `The migration ${row.migration_name} was changed after it had been applied to this database; restore its file, and put the change into a new migration.`,
      );
    }
  }
  const done = new Set(rows.map((row) => row.migration_name));
  return migrations.filter((migration) => !done.has(migration.name));
}

async function apply(client: pg.Client, migration: Migration): Promise<void> {
  const startedAt = new Date();
  await client.query("BEGIN");
  try {
    await client.query(migration.sql);
    // A migration may have changed the role or the search path for itself; neither may leak into the bookkeeping.
    await client.query(`RESET search_path; SET ROLE ${ownerRole}`);
    await client.query(
      `INSERT INTO _prisma_migrations (id, checksum, finished_at, migration_name, started_at, applied_steps_count)
       VALUES ($1, $2, clock_timestamp(), $3, $4, 1)`,
      [randomUUID(), migration.checksum, migration.name, startedAt],
    );
    await client.query("COMMIT");
  } catch (error) {
    await client.query("ROLLBACK");
    throw new Failure(
      `The migration ${migration.name} failed and was rolled back: ${explain(error, migration.sql)}`,
    );
  }
}

function explain(error: unknown, sql: string): string {
  if (!(error instanceof pg.DatabaseError)) return String(error);
  const position = Number(error.position);
  const place = position > 0 ? ` (line ${sql.slice(0, position).split("\n").length})` : "";
  return `${error.message}${place}`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await runCommand(async () => {
    const log = (line: string) => void process.stdout.write(`${line}\n`);
    const at = process.argv.indexOf("--new");
    if (at >= 0) {
      const { writeMigration } = await import("@/lib/commands/write-migration");
      log(await writeMigration(process.argv[at + 1] ?? ""));
      return 0;
    }
    const databaseUrl = process.env.DATABASE_URL;
    if (databaseUrl === undefined) throw new Failure("Set DATABASE_URL to the database to migrate.");
    const count = await migrate({ databaseUrl, log });
    log(count === 0 ? "Nothing to apply." : `${count} applied.`);
    return 0;
  });
}
