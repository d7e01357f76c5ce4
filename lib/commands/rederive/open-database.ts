import { existsSync } from "node:fs";
import path from "node:path";
import { stateFolder } from "@/lib/commands/checkout";
import { Failure } from "@/lib/commands/failure";
import { connect } from "@/lib/commands/postgres/connect";
import { openHome } from "@/lib/commands/postgres/home";
import { runningPostmaster } from "@/lib/commands/postgres/postmaster";
import { runtimeRole } from "@/lib/commands/postgres/roles";
import { startServer, urlOf } from "@/lib/commands/postgres/server";

export type OpenDatabase = { readonly url: string; readonly close: () => void };

/** The database of the site, as its product's role, which can change no evidence: nothing here is to be repaired. */
export async function openDatabase(
  environment: NodeJS.ProcessEnv,
  log: (line: string) => void,
): Promise<OpenDatabase> {
  const set = (name: string) => environment[name]?.trim() || undefined;
  const given = set("RUNTIME_DATABASE_URL");
  const site = set("DATABASE_URL");
  if (given !== undefined) return demandMigrated({ url: given, close: () => {} });
  if (site !== undefined) return demandMigrated({ url: asRuntime(site), close: () => {} });
  return demandMigrated(await ownDatabase(set("EMFOLIO_DATA_DIR"), log));
}

/** Our own server, which may be serving the site at this moment; else it is started for as long as this lasts. */
async function ownDatabase(named: string | undefined, log: (line: string) => void): Promise<OpenDatabase> {
  const folder = path.resolve(named ?? path.join(stateFolder, "postgres"));
  const home = openHome(folder, named !== undefined, log);
  if (!existsSync(home.data))
    throw new Failure("There is no database here yet: npm start makes one, DATABASE_URL names another.");
  const running = runningPostmaster(home);
  if (running !== undefined) return { url: asRuntime(urlOf(home, running.port, "emfolio")), close: () => {} };
  const server = await startServer({ folder, insisted: named !== undefined, log });
  return { url: asRuntime(server.urlOf("emfolio")), close: server.stop };
}

export function asRuntime(url: string): string {
  const changed = new URL(url);
  changed.searchParams.set("options", `-c role=${runtimeRole}`);
  return changed.href;
}

async function demandMigrated(database: OpenDatabase): Promise<OpenDatabase> {
  try {
    const client = await connect(database.url);
    try {
      const { rows } = await client.query("SELECT to_regclass('audit_head') IS NOT NULL AS migrated");
      if (rows[0]?.migrated === true) return database;
    } finally {
      await client.end();
    }
    throw new Failure("This database has no laboratory in it yet: npm start prepares it.");
  } catch (error) {
    database.close();
    throw error;
  }
}
