import type { Tx } from "../in-scope";

/** Holds without an end, the oldest first: of all, of those that wait for an answer, were answered, or asked nothing. */
export const openHoldIds = (
  tx: Tx,
  filter: "all" | "waiting" | "answered" | "not-asked",
  page: { readonly limit: number; readonly offset: number },
): Promise<{ readonly id: string; readonly count: number }[]> =>
  tx.$queryRaw<{ id: string; count: number }[]>`
    WITH standing AS (
      SELECT h.id, h.placed_at,
             (SELECT count(*) FROM question q WHERE q.hold_id = h.id) AS asked,
             (SELECT count(*) FROM question q JOIN answer a ON a.question_id = q.id WHERE q.hold_id = h.id) AS answered
        FROM hold h WHERE NOT EXISTS (SELECT FROM hold_release r WHERE r.hold_id = h.id)
    )
    SELECT id::text AS id, (count(*) OVER ())::int AS count FROM standing
     WHERE CASE ${filter}::text WHEN 'all' THEN true WHEN 'not-asked' THEN asked = 0
                WHEN 'waiting' THEN answered < asked ELSE asked > 0 AND answered = asked END
     ORDER BY placed_at, id LIMIT ${page.limit} OFFSET ${page.offset}`;
