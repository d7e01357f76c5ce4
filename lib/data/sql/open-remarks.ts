import type { Tx } from "../in-scope";

export type RunWithRemarks = { readonly number: string; readonly remarks: number; readonly count: number };

/** Runs in review, or given back, with remarks that nobody has settled; the longest waiting first. */
export const openRemarks = (tx: Tx, limit: number): Promise<RunWithRemarks[]> =>
  tx.$queryRaw<RunWithRemarks[]>`
    SELECT r.number, count(*)::int AS remarks, (count(*) OVER ())::int AS count
      FROM review_comment c
      JOIN run r ON r.id = c.run_id
     WHERE c.answers_id IS NULL AND r.state IN ('submitted', 'returned')
       AND NOT EXISTS (SELECT FROM review_comment a WHERE a.run_id = c.run_id AND a.answers_id = c.id AND a.settles)
     GROUP BY r.number ORDER BY min(c.id) LIMIT ${limit}`;
