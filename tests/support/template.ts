import { createHash, randomBytes } from "node:crypto";
import { createRequire } from "node:module";
import pg from "pg";
import { changeUrl, connect } from "@/lib/commands/postgres/connect";
import { ensureQueue } from "@/lib/commands/postgres/queue-schema";
import { ensureLogin, ensureRoles, prepareDatabase } from "@/lib/commands/postgres/roles";
import { migrate, readMigrations } from "@/prisma/migrate";

/** Where test databases are cloned from, and how to sign in to a clone. Plain text: it travels to test workers. */
export type Template = {
  readonly adminUrl: string;
  readonly name: string;
  readonly user: string;
  /** Who takes jobs from the queue; the same password. */
  readonly jobsUser: string;
  readonly password: string;
};

/** Its tables are in the template too. */
const queueVersion: string = createRequire(import.meta.url)("graphile-worker/package.json").version;

/** Makes the migrated database that tests clone, once per state of the migrations. */
export async function ensureTemplate(adminUrl: string, fresh: boolean): Promise<Template> {
  const digest = createHash("sha256").update(
    [queueVersion, ...readMigrations().map(({ name, checksum }) => name + checksum)].join("\n"),
  );
  const name = `template_${digest.digest("hex").slice(0, 12)}`;
  const password = createHash("sha256")
    .update(`runtime ${new URL(adminUrl).password}`)
    .digest("hex");
  const client = await connect(adminUrl);
  try {
    // Several runs may begin at once.
    await client.query("SELECT pg_advisory_lock(41)");
    if (fresh) await dropLeftovers(client, name);
    await ensureRoles(client);
    const user = await ensureLogin(client, "emfolio_test", "app", password);
    const jobsUser = await ensureLogin(client, "emfolio_test", "worker", password);
    const { rowCount } = await client.query("SELECT 1 FROM pg_database WHERE datname = $1", [name]);
    if (rowCount === 0) await build(client, adminUrl, name);
    return { adminUrl, name, user, jobsUser, password };
  } finally {
    await client.end();
  }
}

async function build(client: pg.Client, adminUrl: string, name: string): Promise<void> {
  const making = `making_${randomBytes(6).toString("hex")}`;
  await client.query(`CREATE DATABASE ${making} OWNER emfolio_owner`);
  const databaseUrl = changeUrl(adminUrl, { database: making });
  try {
    const inside = await connect(databaseUrl);
    await prepareDatabase(inside).finally(() => inside.end());
    await migrate({ databaseUrl, log: () => {} });
    await ensureQueue(databaseUrl);
    await client.query(`ALTER DATABASE ${making} RENAME TO ${name}`);
  } catch (error) {
    await client.query(`DROP DATABASE ${making} WITH (FORCE)`);
    throw error;
  }
}

/** Databases of runs that were killed. */
async function dropLeftovers(client: pg.Client, keep: string): Promise<void> {
  const { rows } = await client.query<{ datname: string }>(
    "SELECT datname FROM pg_database WHERE datname ~ '^(test|making|template)_' AND datname <> $1",
    [keep],
  );
  for (const { datname } of rows) await client.query(`DROP DATABASE ${pg.escapeIdentifier(datname)}`);
}
