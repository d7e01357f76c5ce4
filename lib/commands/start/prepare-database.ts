import { createHmac, randomBytes } from "node:crypto";
import path from "node:path";
import type pg from "pg";
import { stateFolder } from "@/lib/commands/checkout";
import { changeUrl, connect, databaseOf } from "@/lib/commands/postgres/connect";
import { readMarks } from "@/lib/commands/postgres/marks";
import { isRunning } from "@/lib/commands/postgres/postmaster";
import { ensureQueue } from "@/lib/commands/postgres/queue-schema";
import {
  ensureLogin,
  ensureRoles,
  type Login,
  ownerRole,
  prepareDatabase,
} from "@/lib/commands/postgres/roles";
import { startServer } from "@/lib/commands/postgres/server";
import type { Settings } from "@/lib/commands/start/settings";
import { requireJobsRole, siteRoles } from "@/lib/commands/start/site-roles";
import { migrate } from "@/prisma/migrate";

export type ReadyDatabase = {
  readonly kind: "own" | "given";
  /** May act as the owner role: for migrations and marks. */
  readonly adminUrl: string;
  /** What the pages, the demo seed and the worker's operations use. */
  readonly runtimeUrl: string;
  /** What the worker takes its jobs from the queue with. */
  readonly jobsUrl: string;
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
    const urls = await migrated(adminUrl, () => randomBytes(24).toString("hex"), log);
    return {
      kind: "own",
      ...{ adminUrl, ...urls, folder: server.home.folder, stop: server.stop },
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
  const given = siteRoles(settings);
  const rest = {
    kind: "given",
    adminUrl,
    folder: stateFolder,
    isRunning: () => true,
    stop: () => {},
  } as const;
  if (given === undefined) {
    await withClient(adminUrl, ensureRoles);
    return {
      ...rest,
      ...(await migrated(adminUrl, (whose) => sharedPassword(settings, adminUrl, whose), log)),
    };
  }
  for (const url of [given.runtimeUrl, given.jobsUrl]) await withClient(url, async () => {});
  await withClient(adminUrl, requireJobsRole);
  await migrate({ databaseUrl: adminUrl, log });
  await ensureQueue(adminUrl);
  return { ...rest, ...given };
}

/** Several servers on one database must agree on the passwords; they share AUTH_SECRET, so these follow from that. */
function sharedPassword(settings: Settings, adminUrl: string, whose: Login): string {
  if (settings.authSecret === undefined) return randomBytes(24).toString("hex");
  const role = { app: "runtime", worker: "jobs" }[whose];
  return createHmac("sha256", settings.authSecret)
    .update(`${role} role of ${databaseOf(adminUrl)}`)
    .digest("hex");
}

type Urls = Pick<ReadyDatabase, "runtimeUrl" | "jobsUrl">;

async function migrated(
  adminUrl: string,
  passwordOf: (whose: Login) => string,
  log: (line: string) => void,
): Promise<Urls> {
  const [runtimeUrl, jobsUrl] = await withClient(adminUrl, async (client) => {
    await prepareDatabase(client);
    const signIn = async (whose: Login) => {
      const password = passwordOf(whose);
      const user = await ensureLogin(client, databaseOf(adminUrl), whose, password);
      return changeUrl(adminUrl, { user, password });
    };
    return [await signIn("app"), await signIn("worker")] as const;
  });
  await migrate({ databaseUrl: adminUrl, log });
  await ensureQueue(adminUrl);
  return { runtimeUrl, jobsUrl };
}

export async function withClient<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = await connect(url);
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}
