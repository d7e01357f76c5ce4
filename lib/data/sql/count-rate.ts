import type { Tx } from "@/lib/data/in-scope";

/** One more of this key within the window that begins then; answers how many that makes. Parallel callers each count. */
export const countRate = (tx: Tx, key: string, windowStart: Date): Promise<readonly { count: number }[]> =>
  tx.$queryRaw`INSERT INTO rate_count AS known (key, window_start, count) VALUES (${key}, ${windowStart}, 1)
    ON CONFLICT (key, window_start) DO UPDATE SET count = known.count + 1 RETURNING count`;
