import { Logger, runOnce } from "graphile-worker";
import pg from "pg";
import { becomeSoleWorker } from "@/lib/commands/jobs/sole-worker";
import { taskList } from "@/lib/jobs/task-list";
import type { Work } from "@/lib/jobs/work";
import { testSeal } from "./issue-now";

/** Does every job that is ready, as the worker would, and says how many a dead worker had left. */
export const workOff = async (jobsUrl: string, work: Omit<Work, "seal"> & Partial<Work>): Promise<number> => {
  const sole = await becomeSoleWorker(jobsUrl);
  const pool = new pg.Pool({ connectionString: jobsUrl, max: 3 });
  pool.on("error", () => {});
  pool.on("connect", (client) => void client.on("error", () => {}));
  try {
    await runOnce({
      pgPool: pool,
      taskList: taskList({ seal: testSeal, ...work }),
      logger: new Logger(() => () => {}),
      noHandleSignals: true,
    });
    return sole.freed;
  } finally {
    await pool.end();
    await sole.release();
  }
};
