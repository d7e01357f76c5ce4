import { existsSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import type pg from "pg";
import { Failure } from "@/lib/commands/failure";
import { readMarks, setMark } from "@/lib/commands/postgres/marks";
import { ownerRole } from "@/lib/commands/postgres/roles";
import { type ReadyDatabase, withClient } from "@/lib/commands/start/prepare-database";
import { isLoopback, type Settings } from "@/lib/commands/start/settings";
import type { KeyFolder } from "@/lib/documents/seal/key-folder";
import type { SignIn } from "@/prisma/seed/people";

/** Tells the demo laboratory's story once. Returns its sign-ins, or undefined in a database without a demo. */
export async function ensureDemo(
  database: ReadyDatabase,
  settings: Settings,
  keys: KeyFolder,
  log: (line: string) => void,
): Promise<readonly SignIn[] | undefined> {
  const file = path.join(database.folder, "demo-sign-ins.json");
  const marks = await asOwner(database, readMarks);
  if (marks.has("demo-complete")) {
    requireLoopback(settings);
    return existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as readonly SignIn[]) : [];
  }
  const wanted = settings.demo === "seed" || (settings.demo !== "do not seed" && database.kind === "own");
  if (!wanted || (await isInUse(database))) {
    if (settings.demo === "seed")
      throw new Failure(
        "The database already has people in it: the demo laboratory is seeded only into an empty one.",
      );
    return undefined;
  }
  requireLoopback(settings);
  log("Telling the demo laboratory's story, once (an invented laboratory)");
  await asOwner(database, (client) => setMark(client, "demo-begun"));
  const signIns = await tellDemo(database.runtimeUrl, settings.publicUrl, keys, log);
  writeFileSync(file, JSON.stringify(signIns, undefined, 2), { mode: 0o600 });
  await asOwner(database, (client) => setMark(client, "demo-complete"));
  return signIns;
}

/** Fills an empty, migrated database as the product's own role, through the operations that people use. */
export async function tellDemo(
  databaseUrl: string,
  publicUrl: string,
  keys: KeyFolder,
  log: (line: string) => void,
): Promise<readonly SignIn[]> {
  // Loaded only when needed: it brings the whole product with it.
  const { seedDemo } = await import("@/prisma/seed/demo");
  const { closeDatabase } = await import("@/lib/data/client");
  const { configureDocumentUrl } = await import("@/lib/data/public-url");
  const { makeSealer } = await import("@/lib/operations/seal/sealer");
  configureDocumentUrl(publicUrl);
  try {
    const seal = makeSealer(keys, () => new Date());
    return (await seedDemo({ databaseUrl, seal, log })).signIns;
  } finally {
    await closeDatabase();
  }
}

async function asOwner<T>(database: ReadyDatabase, work: (client: pg.Client) => Promise<T>): Promise<T> {
  return withClient(database.adminUrl, async (client) => {
    await client.query(`SET ROLE ${ownerRole}`);
    return work(client);
  });
}

async function isInUse(database: ReadyDatabase): Promise<boolean> {
  return withClient(database.runtimeUrl, async (client) => {
    await client.query("BEGIN; SET LOCAL app.scope = 'laboratory'"); // unset, every table looks empty
    const { rows } = await client.query<{ used: boolean }>("SELECT EXISTS (SELECT 1 FROM person) AS used");
    return rows[0]?.used === true;
  });
}

/** The demo's passwords are the same everywhere and published, so it may be reached from this machine only. */
function requireLoopback(settings: Settings): void {
  if (isLoopback(settings.host) || settings.demoOnNetwork) return;
  throw new Failure(
    `The demo laboratory's passwords are published, so it is not served on ${settings.host}: unset HOST, use a database without the demo, or insist with EMFOLIO_DEMO_ON_NETWORK=yes.`,
  );
}
