import pg from "pg";
import { Failure } from "@/lib/commands/failure";

/** Any constant will do, as long as every worker uses the same one. Advisory locks belong to one database. */
const lockKey = "7021956410338212";

export type SoleWorker = {
  /** Jobs that a dead worker had begun, and that are free again. */
  readonly freed: number;
  /** Resolves when the database has ended the connection, and with it the lock. */
  readonly lost: Promise<void>;
  readonly release: () => Promise<void>;
};

/**
 * Waits until no other worker works this database. From then on every lock on a job is a dead worker's: it is taken
 * off, or the job would wait four hours. A job whose last attempt was cut short gets that attempt back.
 */
export async function becomeSoleWorker(jobsUrl: string, onWait: () => void = () => {}): Promise<SoleWorker> {
  const client = new pg.Client({ connectionString: jobsUrl, keepAlive: true });
  const lost = new Promise<void>((resolve) => {
    client.once("error", () => resolve());
    client.once("end", resolve);
  });
  try {
    await client.connect();
    const { rows } = await client.query(`SELECT pg_try_advisory_lock(${lockKey}) AS mine`);
    if (rows[0].mine !== true) {
      onWait();
      await client.query(`SELECT pg_advisory_lock(${lockKey})`);
    }
    return { freed: await freeJobs(client), lost, release: () => client.end() };
  } catch (error) {
    await client.end().catch(() => {});
    throw new Failure(`The job queue cannot be used: ${error instanceof Error ? error.message : error}`);
  }
}

async function freeJobs(client: pg.Client): Promise<number> {
  const { rowCount } = await client.query(
    `UPDATE graphile_worker._private_jobs
        SET locked_at = NULL, locked_by = NULL, attempts = least(attempts, max_attempts - 1)
      WHERE locked_at IS NOT NULL`,
  );
  await client.query(
    `UPDATE graphile_worker._private_job_queues SET locked_at = NULL, locked_by = NULL WHERE locked_at IS NOT NULL`,
  );
  return rowCount ?? 0;
}
