import path from "node:path";
import pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { changeUrl } from "@/lib/commands/postgres/connect";
import { type Server, startServer } from "@/lib/commands/postgres/server";
import { readyDatabase } from "@/lib/commands/start/prepare-database";
import { readSettings } from "@/lib/commands/start/settings";
import { temporaryFolder } from "../support/temporary-folder";

// A server of its own: roles belong to the whole server, and this is about who made them.
const folder = path.join(temporaryFolder(), "postgres");
let server: Server;
let siteUrl: string;

beforeAll(async () => {
  server = await startServer({ folder, insisted: true, settings: { fsync: "off" }, log: () => {} });
  await query(server.urlOf("postgres"), "CREATE ROLE site LOGIN CREATEROLE PASSWORD 'site'");
  await query(server.urlOf("postgres"), "CREATE DATABASE laboratory OWNER site");
  siteUrl = changeUrl(server.urlOf("laboratory"), { user: "site", password: "site" });
});
afterAll(() => server.stop());

async function query(url: string, sql: string): Promise<readonly Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  return client
    .query(sql)
    .then(({ rows }) => rows, Promise.reject.bind(Promise))
    .finally(() => client.end());
}

const ready = (environment: Record<string, string>) =>
  readyDatabase(readSettings({ NODE_ENV: "production", ...environment }, []), () => {});

describe("a PostgreSQL of the site's own", () => {
  it("is prepared by a role that is no superuser, and served by one that owns nothing", async () => {
    const database = await ready({ DATABASE_URL: siteUrl });
    expect(database.kind).toBe("given");
    expect(new URL(database.runtimeUrl).username).toBe("laboratory_app");
    expect(new URL(database.jobsUrl).username).toBe("laboratory_worker");
    const owners = await query(
      siteUrl,
      "SELECT DISTINCT tableowner FROM pg_tables WHERE schemaname = 'public'",
    );
    expect(owners).toEqual([{ tableowner: "emfolio_owner" }]);
    const queue = await query(
      siteUrl,
      "SELECT DISTINCT tableowner FROM pg_tables WHERE schemaname = 'graphile_worker'",
    );
    expect(queue).toEqual([{ tableowner: "emfolio_jobs" }]);
    await expect(query(database.runtimeUrl, "CREATE TABLE mine (id int)")).rejects.toThrow(
      /permission denied/,
    );
    await expect(query(database.runtimeUrl, "DELETE FROM audit_event")).rejects.toThrow(/permission denied/);
  });

  it("may be called as the product is, without its sign-ins being its roles", async () => {
    await query(server.urlOf("postgres"), "CREATE DATABASE emfolio OWNER site");
    const { runtimeUrl, jobsUrl } = await ready({
      DATABASE_URL: changeUrl(siteUrl, { database: "emfolio" }),
    });
    expect([runtimeUrl, jobsUrl].map((url) => new URL(url).username)).toEqual([
      "emfolio_app",
      "emfolio_worker",
    ]);
  });

  it("gets a new password for the runtime role at each start", async () => {
    const before = (await ready({ DATABASE_URL: siteUrl })).runtimeUrl;
    const after = (await ready({ DATABASE_URL: siteUrl })).runtimeUrl;
    await expect(query(before, "SELECT 1")).rejects.toThrow(/password authentication failed/);
    expect(await query(after, "SELECT 1 AS one")).toEqual([{ one: 1 }]);
  });

  it("lets several servers with one secret agree on it", async () => {
    const environment = { DATABASE_URL: siteUrl, AUTH_SECRET: "a secret of at least thirty-two characters" };
    const first = (await ready(environment)).runtimeUrl;
    expect((await ready(environment)).runtimeUrl).toBe(first);
    expect(first).not.toContain(environment.AUTH_SECRET);
  });

  it("keeps its hands off the roles of a site that makes them itself", async () => {
    await query(
      server.urlOf("postgres"),
      "CREATE ROLE theirs LOGIN PASSWORD 'theirs' IN ROLE emfolio_runtime",
    );
    await query(
      server.urlOf("postgres"),
      "CREATE ROLE their_worker LOGIN PASSWORD 'theirs' IN ROLE emfolio_jobs",
    );
    const theirs = changeUrl(siteUrl, { user: "theirs", password: "theirs" });
    const worker = changeUrl(siteUrl, { user: "their_worker", password: "theirs" });
    const before = await query(
      server.urlOf("postgres"),
      "SELECT rolname, rolpassword FROM pg_authid ORDER BY 1",
    );
    const given = { DATABASE_URL: siteUrl, RUNTIME_DATABASE_URL: theirs };
    await expect(ready(given)).rejects.toThrow(/RUNTIME_DATABASE_URL is set and JOBS_DATABASE_URL is not/);
    const database = await ready({ ...given, JOBS_DATABASE_URL: worker });
    expect(database).toMatchObject({ runtimeUrl: theirs, jobsUrl: worker });
    expect(
      await query(server.urlOf("postgres"), "SELECT rolname, rolpassword FROM pg_authid ORDER BY 1"),
    ).toEqual(before);
  });

  it("says what a site that came from before the job queue has to make, and changes nothing", async () => {
    await query(
      server.urlOf("postgres"),
      "CREATE ROLE before LOGIN PASSWORD 'before' IN ROLE emfolio_owner, emfolio_runtime",
    );
    const before = changeUrl(siteUrl, { user: "before", password: "before" });
    await expect(
      ready({ DATABASE_URL: before, RUNTIME_DATABASE_URL: before, JOBS_DATABASE_URL: before }),
    ).rejects.toThrow(/^DATABASE_URL cannot act as emfolio_jobs: CREATE ROLE emfolio_jobs NOLOGIN; /);
  });
});
