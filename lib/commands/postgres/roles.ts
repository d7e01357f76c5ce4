import { createHash, createHmac, pbkdf2Sync, randomBytes } from "node:crypto";
import pg from "pg";
import { Failure } from "@/lib/commands/failure";

/** Owns the schema and everything in it; only migrations act as it. */
export const ownerRole = "emfolio_owner";

/** Named in grants and policies. Owns nothing; the running product signs in as a member of it. */
export const runtimeRole = "emfolio_runtime";

/** Owns the job queue, and nothing of the laboratory's; the worker signs in as a member of it. */
export const jobsRole = "emfolio_jobs";

/** Makes the three roles that every database of the server shares. Needs a role that may create roles. */
export async function ensureRoles(client: pg.Client): Promise<void> {
  await inOneLine(async () => {
    for (const role of [ownerRole, runtimeRole, jobsRole]) await createRole(client, role, "NOLOGIN");
    const { rows } = await client.query("SELECT rolsuper FROM pg_roles WHERE rolname = CURRENT_USER");
    // Who makes a role may administer it, but not act as it; a superuser may anyway.
    if (rows[0]?.rolsuper !== true) await client.query(`GRANT ${ownerRole}, ${jobsRole} TO CURRENT_USER`);
  });
}

/** What the site's role may not do is the site's to decide: said in one line, with what to do. */
async function inOneLine<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof pg.DatabaseError) || error.code !== "42501") throw error;
    throw new Failure(
      `The role of DATABASE_URL may not prepare the database (${error.message}): give it CREATEROLE and the database, or make the roles yourself and set RUNTIME_DATABASE_URL (see .env.example).`,
    );
  }
}

/** Lets the two owners make things in the client's database, and nobody else. */
export async function prepareDatabase(client: pg.Client): Promise<void> {
  await inOneLine(async () => {
    const database = pg.escapeIdentifier(
      (await client.query("SELECT current_database() AS name")).rows[0].name,
    );
    await client.query(`GRANT CONNECT, CREATE, TEMPORARY ON DATABASE ${database} TO ${ownerRole}`);
    await client.query(`GRANT CONNECT ON DATABASE ${database} TO ${runtimeRole}`);
    // A schema of its own, made by a migration; in the laboratory's it may make nothing.
    await client.query(`GRANT CONNECT, CREATE ON DATABASE ${database} TO ${jobsRole}`);
    await client.query(`REVOKE TEMPORARY ON DATABASE ${database} FROM PUBLIC`);
    await client.query(`GRANT USAGE, CREATE ON SCHEMA public TO ${ownerRole}`);
    await client.query("REVOKE CREATE ON SCHEMA public FROM PUBLIC");
  });
}

/** Who signs in: the product (`<database>_app`) and the worker's queue (`<database>_worker`; never a role above, whatever the database is called). */
const logins = { app: runtimeRole, worker: jobsRole } as const;
export type Login = keyof typeof logins;

/**
 * Gives a sign-in of this database the password and returns its name. Only a digest of the password is sent, so that
 * none stands in a server's log.
 */
export async function ensureLogin(
  client: pg.Client,
  database: string,
  whose: Login,
  password: string,
): Promise<string> {
  return inOneLine(async () => {
    const name = `${database.slice(0, 62 - whose.length)}_${whose}`;
    await createRole(client, name, "LOGIN");
    const quoted = pg.escapeIdentifier(name);
    await client.query(`ALTER ROLE ${quoted} PASSWORD '${scramVerifier(password)}'`);
    await client.query(`GRANT ${logins[whose]} TO ${quoted}`);
    return name;
  });
}

async function createRole(client: pg.Client, name: string, attributes: string): Promise<void> {
  const { rowCount } = await client.query("SELECT 1 FROM pg_roles WHERE rolname = $1", [name]);
  if (rowCount !== 0) return;
  try {
    await client.query(`CREATE ROLE ${pg.escapeIdentifier(name)} ${attributes}`);
  } catch (error) {
    const code = error instanceof pg.DatabaseError ? error.code : undefined;
    if (code !== "42710" && code !== "23505") throw error; // else another start made it at the same moment
  }
}

/** What PostgreSQL stores for a password under SCRAM-SHA-256 (RFC 5803). */
function scramVerifier(password: string): string {
  const salt = randomBytes(16);
  const iterations = 4096;
  const salted = pbkdf2Sync(password, salt, iterations, 32, "sha256");
  const keyed = (text: string) => createHmac("sha256", salted).update(text).digest();
  const storedKey = createHash("sha256").update(keyed("Client Key")).digest("base64");
  const serverKey = keyed("Server Key").toString("base64");
  return `SCRAM-SHA-256$${iterations}:${salt.toString("base64")}$${storedKey}:${serverKey}`;
}
