import type { Tx } from "@/lib/data/in-scope";
import { Prisma } from "@/lib/generated/prisma/client";
import { isReplaced } from "./hand-back";

export type OrderSensors = {
  readonly quantity: number;
  readonly states: readonly string[];
  /** Of these, with a certificate, ours or a provider's: what was handed back unmeasured has none. */
  readonly certified: number;
};

export const noSensors: OrderSensors = { quantity: 0, states: [], certified: 0 };

type Row = {
  readonly id: string;
  readonly quantity: number;
  readonly certified: number;
  readonly counts: Record<string, number> | null;
};

const isCertified = Prisma.sql`(s.state = 'issued' OR (s.state = 'collected' AND (
  EXISTS (SELECT FROM certificate c WHERE c.sensor_id = s.id)
  OR EXISTS (SELECT FROM certificate_part p WHERE p.sensor_id = s.id)
  OR EXISTS (SELECT FROM provider_report r JOIN provider_report_decision d ON d.report_id = r.id
              WHERE r.sensor_id = s.id AND d.decision = 'accepted'))))`;

/** How many sensors each order asks for, and the state of each that came and that no other is awaited for; counted where they lie, and told one by one. */
export const orderSensorStates = async (
  tx: Tx,
  ids: readonly string[],
): Promise<ReadonlyMap<string, OrderSensors>> => {
  const rows = await tx.$queryRaw<Row[]>`
    SELECT o.id::text AS id,
           (SELECT coalesce(sum(quantity), 0)::int FROM order_line WHERE order_id = o.id) AS quantity,
           (SELECT count(*)::int FROM order_line l JOIN sensor s ON s.order_line_id = l.id
             WHERE l.order_id = o.id AND ${isCertified} AND NOT ${isReplaced}) AS certified,
           (SELECT jsonb_object_agg(state, n) FROM (
              SELECT s.state, count(*) AS n FROM order_line l JOIN sensor s ON s.order_line_id = l.id
               WHERE l.order_id = o.id AND NOT ${isReplaced} GROUP BY s.state) AS counted) AS counts
      FROM unnest(${[...ids]}::uuid[]) AS o (id)`;
  return new Map(
    rows.map(({ id, quantity, certified, counts }) => [
      id,
      {
        ...{ quantity, certified },
        states: Object.entries(counts ?? {}).flatMap(([state, count]) => Array<string>(count).fill(state)),
      },
    ]),
  );
};
