import { parseCronItems, run } from "graphile-worker";
import { queueLog } from "./queue-log";
import { taskList } from "./task-list";
import type { Work } from "./work";

export type Worker = {
  /** Takes no more jobs, and lets those that are being done end. */
  readonly stop: () => Promise<void>;
  /** Resolves or rejects when it works no longer. */
  readonly ended: Promise<void>;
};

/** One key each, so that one that is due and one asked for at a start are one job. */
const daily = ["due-reminders", "take-up-pending"].map((task) => ({ task, options: { jobKey: task } }));

/** Works the queue until it is stopped. Whoever calls it makes sure that no other worker works the same database. */
export const runWorker = async (
  jobsUrl: string,
  work: Work,
  log: (line: string) => void,
): Promise<Worker> => {
  const runner = await run({
    connectionString: jobsUrl,
    taskList: taskList(work),
    // At 05:00 UTC, before the laboratory's day. A start does not wait for it.
    parsedCronItems: parseCronItems(daily.map((item) => ({ ...item, match: "0 5 * * *" }))),
    logger: queueLog(log),
    concurrency: 2,
    maxPoolSize: 4,
    // New jobs are announced; this is for those whose next attempt has come.
    pollInterval: 5_000,
    noHandleSignals: true,
    // Not for speed: only in batches, even of one, does a stop wait until the end of a job is written.
    preset: { worker: { completeJobBatchDelay: 0, failJobBatchDelay: 0 } },
  });
  for (const { task, options } of daily) await runner.addJob(task, {}, options);
  return { stop: () => runner.stop(), ended: runner.promise };
};
