import { connect } from "@/lib/commands/postgres/connect";
import type { FrontDesk } from "./front-desk";

export type Bulk = { readonly from: number; readonly to: number; readonly customerId: string };

/** Accepted orders by number with one sensor each, past the operations: for lists, whose length is what matters. */
export const insertOrders = async (desk: FrontDesk, { from, to, customerId }: Bulk): Promise<void> => {
  const admin = await connect(desk.database.adminUrl);
  try {
    // No review stands behind them: what is guarded about acceptance is tried elsewhere.
    await admin.query("BEGIN; ALTER TABLE customer_order DISABLE TRIGGER USER");
    await admin.query(
      `WITH made AS (
         INSERT INTO customer_order (number, customer_id, purchase_order, state, decision_rule, recorded_by_id, recorded_at, accepted_by_id, accepted_at)
         SELECT 'O-2025-' || lpad(n::text, 4, '0'), $3, 'Buy ' || (7000 + n), 'accepted', 'none', p.id,
                '2025-01-01'::timestamptz + interval '1 minute' * (n / 10), p.id, '2025-01-02'
           FROM generate_series($1::int, $2::int) AS n, (SELECT id FROM person ORDER BY email LIMIT 1) AS p
         RETURNING id, customer_id, number
       ), lines AS (
         INSERT INTO order_line (order_id, customer_id, position, type_letter, construction, protection, quantity, temperature_unit)
         SELECT id, customer_id, 1, 'K', '3 mm', 'metal-sheath', 1, 'C' FROM made RETURNING id, order_id, customer_id
       )
       INSERT INTO sensor (tag, customer_id, order_line_id, serial, type_letter, construction, protection)
       SELECT 'T-9' || right(made.number, 4), lines.customer_id, lines.id, 'MX-' || right(made.number, 4) || '/Q', 'K', '3 mm', 'metal-sheath'
         FROM lines JOIN made ON made.id = lines.order_id`,
      [from, to, customerId],
    );
    await admin.query("ALTER TABLE customer_order ENABLE TRIGGER USER; COMMIT");
  } finally {
    await admin.end();
  }
};
