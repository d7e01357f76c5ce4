import { randomBytes } from "node:crypto";
import type pg from "pg";
import { borrowServer } from "@/lib/commands/postgres/borrow-server";
import { changeUrl, connect } from "@/lib/commands/postgres/connect";
import { ensureQueue } from "@/lib/commands/postgres/queue-schema";
import { ensureLogin, ensureRoles, ownerRole, prepareDatabase } from "@/lib/commands/postgres/roles";
import { migrate } from "@/prisma/migrate";

/** A connection that is still closing is not cut off: its end would come as an error that nobody awaits. */
const isLeft = async (client: pg.Client, database: string): Promise<void> => {
  for (let asked = 0; asked < 100; asked++) {
    const { rows } = await client.query(
      "SELECT count(*)::int AS open, pg_sleep(0.05) FROM pg_stat_activity WHERE datname = $1",
      [database],
    );
    if (rows[0].open === 0) return;
  }
};

/** A migrated database of its own, thrown away at the end. */
export const withDatabase = async (
  work: (adminUrl: string, runtimeUrl: string) => Promise<void>,
): Promise<void> => {
  const server = await borrowServer();
  const database = `bench_${randomBytes(6).toString("hex")}`;
  const adminUrl = server.urlOf(database);
  const client = await connect(server.urlOf("postgres"));
  try {
    await ensureRoles(client);
    await client.query(`CREATE DATABASE ${database} OWNER ${ownerRole}`);
    const inside = await connect(adminUrl);
    await prepareDatabase(inside).finally(() => inside.end());
    await migrate({ databaseUrl: adminUrl, log: () => {} });
    await ensureQueue(adminUrl);
    const password = randomBytes(16).toString("hex");
    const user = await ensureLogin(client, database, "app", password);
    await work(adminUrl, changeUrl(adminUrl, { user, password }));
    await isLeft(client, database);
    await client.query(`DROP DATABASE ${database} WITH (FORCE)`);
    await client.query(`DROP ROLE ${user}`);
  } finally {
    await client.end();
    await server.giveBack();
  }
};
