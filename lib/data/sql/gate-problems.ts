import type { Tx } from "../in-scope";

export type GateProblem = { readonly number: string; readonly verdict: string; readonly count: number };

/** Planned runs whose last assessment did not let them start, the first planned first. */
export const gateProblems = (tx: Tx, limit: number): Promise<GateProblem[]> =>
  tx.$queryRaw<GateProblem[]>`
    SELECT r.number, g.verdict, (count(*) OVER ())::int AS count
      FROM run r CROSS JOIN LATERAL (
        SELECT verdict FROM gate_outcome WHERE run_id = r.id ORDER BY id DESC LIMIT 1) AS g
     WHERE r.state = 'planned' AND g.verdict <> 'may-start'
     ORDER BY r.created_at, r.id LIMIT ${limit}`;
