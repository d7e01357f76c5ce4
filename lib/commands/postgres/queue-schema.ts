import { Logger, runMigrations } from "graphile-worker";
import pg from "pg";
import { Failure } from "@/lib/commands/failure";
import { jobsRole } from "@/lib/commands/postgres/roles";

/**
 * Makes or upgrades the tables of the job queue, as the role that owns them. Safe to run again and from two starts at
 * once; a database that a newer version of the queue has used is refused.
 */
export async function ensureQueue(adminUrl: string): Promise<void> {
  const pool = new pg.Pool({ connectionString: adminUrl, max: 1 });
  // The queue's own migrations name no owner: what they make belongs to whoever runs them.
  pool.on("connect", (client) => void client.query(`SET ROLE ${jobsRole}`).catch(() => {}));
  pool.on("error", () => {});
  try {
    await runMigrations({ pgPool: pool, logger: new Logger(() => () => {}) });
  } catch (error) {
    throw new Failure(`The job queue cannot be prepared: ${error instanceof Error ? error.message : error}`);
  } finally {
    await pool.end();
  }
}
