import type pg from "pg";
import { Failure } from "@/lib/commands/failure";
import { jobsRole } from "@/lib/commands/postgres/roles";
import type { Settings } from "@/lib/commands/start/settings";

/** The sign-ins of a site that makes its roles itself: both, or neither. */
export function siteRoles(
  settings: Settings,
): { readonly runtimeUrl: string; readonly jobsUrl: string } | undefined {
  const { runtimeDatabaseUrl: runtimeUrl, jobsDatabaseUrl: jobsUrl } = settings;
  if (runtimeUrl !== undefined && jobsUrl !== undefined) return { runtimeUrl, jobsUrl };
  if (runtimeUrl === undefined && jobsUrl === undefined) return undefined;
  const [set, missing] =
    jobsUrl === undefined
      ? ["RUNTIME_DATABASE_URL", "JOBS_DATABASE_URL"]
      : ["JOBS_DATABASE_URL", "RUNTIME_DATABASE_URL"];
  throw new Failure(
    `${set} is set and ${missing} is not: a site that makes its roles itself names both (see .env.example).`,
  );
}

/** A site that came from a version without jobs has this role still to make; said before anything is changed. */
export async function requireJobsRole(client: pg.Client): Promise<void> {
  const { rows } = await client.query<{ may: boolean | null }>(
    `SELECT pg_has_role(oid, 'SET') AND has_database_privilege(oid, current_database(), 'CREATE') AS may
       FROM pg_roles WHERE rolname = $1`,
    [jobsRole],
  );
  if (rows[0]?.may === true) return;
  throw new Failure(
    `DATABASE_URL cannot act as ${jobsRole}: CREATE ROLE ${jobsRole} NOLOGIN; GRANT ${jobsRole} to it; GRANT CONNECT, CREATE ON DATABASE to ${jobsRole} (see .env.example).`,
  );
}
