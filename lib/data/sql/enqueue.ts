import type { Tx } from "@/lib/data/in-scope";

/** Puts a job into the queue with this transaction: it begins after the commit, and never after a rollback. */
export const enqueueRow = async (tx: Tx, task: string, key: string, payload: string): Promise<void> => {
  await tx.$executeRaw`SELECT jobs.enqueue(${task}, ${key}, ${payload})`;
};
