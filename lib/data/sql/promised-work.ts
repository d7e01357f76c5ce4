import { countedUpTo } from "@/lib/domain/list/page";
import type { Tx } from "../in-scope";
import { goesBack, isReplaced } from "./hand-back";

export type PromisedWorkRow = {
  readonly id: string;
  readonly number: string;
  readonly customer: string;
  readonly promisedOn: string;
  /** Of the lines that are measured in this laboratory. */
  readonly ordered: number;
  readonly toMeasure: number;
  /** Of these, in no load yet. */
  readonly toLoad: number;
  readonly toIssue: number;
  readonly done: number;
  /** Of the other lines, at a provider's or on site: without certificate. */
  readonly elsewhere: number;
  readonly furnaceUntil: string | null;
  readonly isWaiting: boolean;
};

/** Accepted orders promised up to a day, the nearest first, with what is still to be done for each. */
export const promisedWork = (tx: Tx, until: string): Promise<PromisedWorkRow[]> =>
  tx.$queryRaw<PromisedWorkRow[]>`
    SELECT o.id::text AS id, o.number, c.name AS customer, o.promised_on::text AS "promisedOn",
           work.ordered, work."toMeasure", work."toLoad", work."toIssue", work.done, work.elsewhere,
           slot.until AS "furnaceUntil",
           (EXISTS (SELECT FROM question q WHERE q.order_id = o.id
                     AND NOT EXISTS (SELECT FROM answer a WHERE a.question_id = q.id))
            OR EXISTS (SELECT FROM hold h WHERE h.order_id = o.id
                     AND NOT EXISTS (SELECT FROM hold_release r WHERE r.hold_id = h.id))) AS "isWaiting"
      FROM (SELECT id, number, customer_id, promised_on FROM customer_order
             WHERE state = 'accepted' AND promised_on <= ${until}::date
             ORDER BY promised_on, id LIMIT ${countedUpTo + 1}) AS o
      JOIN customer c ON c.id = o.customer_id
      CROSS JOIN LATERAL (SELECT EXISTS (SELECT FROM hold h WHERE h.order_id = o.id) AS ever) AS held
      CROSS JOIN LATERAL (
        SELECT coalesce(sum(l.quantity) FILTER (WHERE h.ours), 0)::int AS ordered,
               coalesce(sum(s."toMeasure") FILTER (WHERE h.ours), 0)::int AS "toMeasure",
               coalesce(sum(s."toLoad") FILTER (WHERE h.ours), 0)::int AS "toLoad",
               coalesce(sum(s."toIssue") FILTER (WHERE h.ours), 0)::int AS "toIssue",
               coalesce(sum(s.done) FILTER (WHERE h.ours), 0)::int AS done,
               coalesce(sum(greatest(0, l.quantity - s.done)) FILTER (WHERE NOT h.ours), 0)::int AS elsewhere
          FROM order_line l
          CROSS JOIN LATERAL (SELECT l.performed_at = 'laboratory' AND l.provider_id IS NULL AS ours) AS h
          CROSS JOIN LATERAL (
            SELECT count(*) FILTER (WHERE s.state IN ('received', 'loaded') AND NOT (held.ever AND ${goesBack})) AS "toMeasure",
                   count(*) FILTER (WHERE s.state = 'received' AND NOT (held.ever AND ${goesBack})) AS "toLoad",
                   count(*) FILTER (WHERE s.state IN ('measured', 'evaluated', 'in-review')) AS "toIssue",
                   count(*) FILTER (WHERE s.state IN ('issued', 'collected') OR (s.state IN ('received', 'loaded') AND held.ever AND ${goesBack})) AS done
              FROM sensor s WHERE s.order_line_id = l.id AND NOT (held.ever AND ${isReplaced})) AS s
         WHERE l.order_id = o.id) AS work
      LEFT JOIN LATERAL (SELECT max(f.ends_at)::date::text AS until FROM furnace_slot f
                          WHERE f.order_id = o.id AND NOT f.is_released) AS slot ON true
     ORDER BY o.promised_on, o.number`;
