import { createHmac, randomBytes } from "node:crypto";
import path from "node:path";
import type pg from "pg";
import { stateFolder } from "@/lib/commands/checkout";
import { changeUrl, connect, databaseOf } from "@/lib/commands/postgres/connect";
import { readMarks } from "@/lib/commands/postgres/marks";
import { isRunning } from "@/lib/commands/postgres/postmaster";
import { ensureLogin, ensureRoles, ownerRole, prepareDatabase } from "@/lib/commands/postgres/roles";
import { startServer } from "@/lib/commands/postgres/server";
import type { Settings } from "@/lib/commands/start/settings";
import { migrate } from "@/prisma/migrate";

export type ReadyDatabase = {
  readonly kind: "own" | "given";
  /** May act as the owner role: for migrations and marks. */
  readonly adminUrl: string;
  /** What the pages and the demo seed use. */
  readonly runtimeUrl: string;
  /** Where what belongs to this database may be kept. */
  readonly folder: string;
  readonly isRunning: () => boolean;
  readonly stop: () => void;
};

/** The database, migrated, with the sign-in of the pages: our own PostgreSQL, or the one of DATABASE_URL. */
export async function readyDatabase(settings: Settings, log: (line: string) => void): Promise<ReadyDatabase> {
  return settings.databaseUrl === undefined
    ? ownDatabase(settings, log)
    : givenDatabase(settings, settings.databaseUrl, log);
}

async function ownDatabase(settings: Settings, log: (line: string) => void): Promise<ReadyDatabase> {
  const folder = settings.dataFolder ?? path.join(stateFolder, "postgres");
  log("Starting PostgreSQL");
  const server = await startServer({
    folder: path.resolve(folder),
    insisted: settings.dataFolder !== undefined,
    log,
  });
  try {
    const adminUrl = server.urlOf("emfolio");
    await withClient(server.urlOf("postgres"), async (client) => {
      await ensureRoles(client);
      await ensureOwnDatabase(client, adminUrl, log);
    });
    const runtimeUrl = await migrated(adminUrl, randomBytes(24).toString("hex"), log);
    return {
      kind: "own",
      ...{ adminUrl, runtimeUrl, folder: server.home.folder, stop: server.stop },
      isRunning: () => isRunning(server.home),
    };
  } catch (error) {
    server.stop();
    throw error;
  }
}

/** A demo that was killed while it was being told is told again from the start: nobody has used that database yet. */
async function ensureOwnDatabase(client: pg.Client, url: string, log: (line: string) => void): Promise<void> {
  const exists = async () =>
    (await client.query("SELECT 1 FROM pg_database WHERE datname = 'emfolio'")).rowCount === 1;
  if (await exists()) {
    const marks = await withClient(url, readMarks);
    if (!marks.has("demo-begun") || marks.has("demo-complete")) return;
    log("The demo laboratory was left unfinished; making it anew");
    await client.query("DROP DATABASE emfolio WITH (FORCE)");
  }
  await client.query(`CREATE DATABASE emfolio OWNER ${ownerRole}`);
}

async function givenDatabase(
  settings: Settings,
  adminUrl: string,
  log: (line: string) => void,
): Promise<ReadyDatabase> {
  const given = settings.runtimeDatabaseUrl;
  if (given === undefined) await withClient(adminUrl, ensureRoles);
  else await withClient(given, async () => {});
  const runtimeUrl = given ?? (await migrated(adminUrl, sharedPassword(settings, adminUrl), log));
  if (given !== undefined) await migrate({ databaseUrl: adminUrl, log });
  return { kind: "given", adminUrl, runtimeUrl, folder: stateFolder, isRunning: () => true, stop: () => {} };
}

/** Several servers on one database must agree on the password; they share AUTH_SECRET, so it follows from that. */
function sharedPassword(settings: Settings, adminUrl: string): string {
  if (settings.authSecret === undefined) return randomBytes(24).toString("hex");
  return createHmac("sha256", settings.authSecret)
    .update(`runtime role of ${databaseOf(adminUrl)}`)
    .digest("hex");
}

async function migrated(adminUrl: string, password: string, log: (line: string) => void): Promise<string> {
  const user = await withClient(adminUrl, async (client) => {
    await prepareDatabase(client);
    return ensureLogin(client, databaseOf(adminUrl), password);
  });
  await migrate({ databaseUrl: adminUrl, log });
  return changeUrl(adminUrl, { user, password });
}

export async function withClient<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = await connect(url);
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}
