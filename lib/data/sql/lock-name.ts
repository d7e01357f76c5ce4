import type { Tx } from "@/lib/data/in-scope";

/** One at a time for this name, until the transaction ends; nothing need exist under it. */
export const lockName = (tx: Tx, name: string): Promise<number> =>
  tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${name}, 0))`;
