import { createHash } from "node:crypto";
import type pg from "pg";

export type Size = { readonly orders: number; readonly customers: number; readonly inWork: number };

/** The number of the order in the middle, which the questions ask for; the ends of some serials too. */
export const middleOf = ({ orders }: Size): number => Math.floor(orders / 2) + 1;

/** Five digits from the middle of the serial of a sensor that was certified, as somebody reads them off a worn label. */
export const serialMiddleOf = ({ orders }: Size): string =>
  String((orders * 5 * 7919) % 1_000_003)
    .padStart(6, "0")
    .slice(1);

/** Quotes a text for SQL written out. */
const quoted = (text: string): string => `'${text.replaceAll("'", "''")}'`;

const id = (kind: string, number: string): string => `md5('${kind} ' || (${number}))::uuid`;
/** The same as a text. */
export const idOf = (kind: string, number: number): string =>
  createHash("md5")
    .update(`${kind} ${number}`)
    .digest("hex")
    .replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
const recorded = (size: Size, number: string): string =>
  `(now() - interval '20 minutes' * (${size.orders} - ${number}))`;

/** Orders by number: the newest are in work, three of four of these accepted. What is accepted has its sensors here. */
const orderState = (size: Size, number: string): string => `
  CASE WHEN ${number} <= ${size.orders - size.inWork} THEN CASE WHEN ${number} % 20 = 0 THEN 'cancelled' ELSE 'completed' END
       WHEN ${number} % 8 = 0 THEN 'requested' WHEN ${number} % 8 = 1 THEN 'recorded' ELSE 'accepted' END`;

const sensorState = `
  CASE WHEN o.state = 'completed' THEN 'collected'
       ELSE (ARRAY['received', 'received', 'loaded', 'measured', 'evaluated', 'in-review', 'issued', 'collected'])[1 + (n % 8)] END`;

const people = `
  INSERT INTO person (id, email, name, password_hash)
  SELECT ${id("person", "n")}, 'bench' || n || '@example.org', 'Bench ' || n, '-' FROM generate_series(1, 6) AS n`;

const furnaces = [
  `INSERT INTO equipment (id, tag, kind, maker, model, serial, state, particulars)
   SELECT ${id("equipment", "n")}, CASE WHEN n <= 4 THEN 'FUR-' || n ELSE 'EQ-' || n END, CASE WHEN n <= 4 THEN 'furnace' ELSE 'junction' END,
          'Invented', 'M', 'SN-' || n, 'in-service',
          CASE WHEN n <= 4 THEN '{"kind":"furnace"}' ELSE '{"kind":"junction","celsius":0,"halfWidthCelsius":0.05,"basis":"invented"}' END
     FROM generate_series(1, 40) AS n`,
  `INSERT INTO furnace (id, equipment_id, tag, name, maker, serial, minimum_celsius, maximum_celsius, bore_millimetre, length_millimetre)
   SELECT ${id("furnace", "n")}, ${id("equipment", "n")}, 'FUR-' || n, 'Furnace', 'Invented', 'SN-' || n, 200, 1200, 60, 900
     FROM generate_series(1, 4) AS n`,
  `INSERT INTO furnace_configuration (id, furnace_id, name, kind, places, immersion_millimetre)
   SELECT ${id("configuration", "n")}, ${id("furnace", "n")}, 'Bare tube', 'bare-tube', 12, 400 FROM generate_series(1, 4) AS n`,
  `INSERT INTO furnace_slot (furnace_id, order_id, starts_at, ends_at, taken_by_id, taken_at)
   SELECT ${id("furnace", "n % 4 + 1")}, o.id, date_trunc('day', now()) + interval '8 hours' * (n / 4), date_trunc('day', now()) + interval '8 hours' * (n / 4 + 1),
          ${id("person", "1")}, now()
     FROM (SELECT id, (row_number() OVER (ORDER BY number))::int AS n FROM customer_order WHERE state = 'accepted' LIMIT 100) AS o`,
];

const orders = (size: Size): readonly string[] => [
  `INSERT INTO customer (id, name, address_lines, contact_name, email)
   SELECT ${id("customer", "n")}, (ARRAY['Alder', 'Birch', 'Cedar', 'Elm', 'Hazel', 'Larch', 'Maple', 'Rowan'])[1 + n % 8] || ' Works ' || lpad(n::text, 4, '0'),
          '1 Street', 'Contact ' || n, 'customer' || n || '@example.org' FROM generate_series(1, ${size.customers}) AS n`,
  `INSERT INTO customer_order (id, number, customer_id, purchase_order, state, urgency, rule_set, promised_on, decision_rule, recorded_by_id, recorded_at, accepted_by_id, accepted_at)
   SELECT ${id("order", "n")}, 'O-2026-' || lpad(n::text, 5, '0'), ${id("customer", `1 + (n * 7919) % ${size.customers}`)},
          'PO ' || (400000 + n), ${orderState(size, "n")}, CASE WHEN n % 10 = 0 THEN 'express' ELSE 'standard' END,
          CASE WHEN n % 5 = 0 THEN 'audited-heat-treatment' ELSE 'none' END,
          current_date - 3 + (n * 13) % 28, 'none', ${id("person", "1")}, ${recorded(size, "n")}, ${id("person", "1")}, ${recorded(size, "n")}
     FROM generate_series(1, ${size.orders}) AS n`,
  "UPDATE customer_order SET accepted_by_id = NULL, accepted_at = NULL WHERE state IN ('requested', 'recorded')",
  `INSERT INTO order_line (id, order_id, customer_id, position, type_letter, construction, protection, quantity, temperature_unit)
   SELECT md5('line ' || o.id || p)::uuid, o.id, o.customer_id, p, CASE WHEN p = 1 THEN 'K' ELSE 'N' END, 'Mineral-insulated, 3 mm', 'metal-sheath', 5 + p, 'C'
     FROM customer_order o CROSS JOIN generate_series(1, 2) AS p`,
  `INSERT INTO order_setpoint (order_line_id, customer_id, position, typed, celsius)
   SELECT l.id, l.customer_id, k, (200 * k)::text, 200 * k FROM order_line l CROSS JOIN generate_series(1, 5) AS k`,
  `INSERT INTO sensor (id, tag, customer_id, order_line_id, serial, type_letter, construction, protection, state)
   SELECT md5('sensor ' || n)::uuid, 'T-' || lpad(n::text, 6, '0'), customer_id, line_id, 'SN ' || lpad(((n::bigint * 7919) % 1000003)::text, 6, '0') || '-' || n,
          type_letter, construction, protection, ${sensorState}
     FROM (SELECT (row_number() OVER (ORDER BY o.number, l.position, k))::int AS n, l.id AS line_id, l.customer_id, l.type_letter, l.construction, l.protection, o.state
             FROM customer_order o JOIN order_line l ON l.order_id = o.id CROSS JOIN LATERAL generate_series(1, CASE WHEN o.state = 'accepted' THEN 5 ELSE l.quantity END) AS k
            WHERE o.state IN ('accepted', 'completed')) AS o`,
  `INSERT INTO intake (sensor_id, customer_id, received_on, condition, polarity, type_check, taken_in_by_id, taken_in_at)
   SELECT id, customer_id, current_date, 'as-described', 'ok', 'ok', ${id("person", "1")}, now() FROM sensor`,
];

const work = (size: Size): readonly string[] => [
  `INSERT INTO run (id, number, configuration_id, voltmeter_id, scanner_id, state, performer_id, created_at, started_at, budget_inputs)
   SELECT ${id("run", "n")}, 'R-2026-' || lpad(n::text, 5, '0'), ${id("configuration", "n % 4 + 1")}, ${id("equipment", "5")}, ${id("equipment", "6")},
          CASE WHEN n <= ${size.orders} - 8 THEN 'signed-off' ELSE (ARRAY['planned', 'measuring', 'returned', 'submitted'])[1 + n % 4] END,
          ${id("person", "2")}, ${recorded(size, "n")}, ${recorded(size, "n")}, '{}'
     FROM generate_series(1, ${size.orders}) AS n`,
  `INSERT INTO run_setpoint (run_id, position, celsius) SELECT r.id, k, 200 * k FROM run r CROSS JOIN generate_series(1, 5) AS k`,
  `INSERT INTO load_place (run_id, place, kind, sensor_id, customer_id, channel, junction_id, junction_celsius)
   SELECT ${id("run", `1 + n / 11`)}, (n % 11)::text, 'sensor', s.id, s.customer_id, (n % 11)::text, ${id("equipment", "7")}, 0
     FROM (SELECT id, customer_id, (row_number() OVER (ORDER BY tag))::int AS n FROM sensor) AS s WHERE 1 + n / 11 <= ${size.orders}`,
  `INSERT INTO question (id, customer_id, order_id, text, asked_by_id, asked_at)
   SELECT md5('question ' || number)::uuid, customer_id, id, 'Which end?', ${id("person", "1")}, recorded_at FROM customer_order WHERE right(number, 1) = '3'`,
  `INSERT INTO answer (question_id, customer_id, text, came_by, said_by_name, said_at)
   SELECT q.id, q.customer_id, 'This one', 'link', 'C', now() FROM question q JOIN customer_order o ON o.id = q.order_id WHERE o.state IN ('completed', 'cancelled')`,
  `INSERT INTO hold (id, customer_id, order_id, kind, reason, placed_by_id, placed_at)
   SELECT md5('hold ' || number)::uuid, customer_id, id, 'question', 'Which end?', ${id("person", "1")}, recorded_at FROM customer_order WHERE right(number, 1) = '7'`,
  `INSERT INTO hold_release (hold_id, customer_id, outcome, reason, released_at)
   SELECT h.id, h.customer_id, 'go-on', 'answered', now() FROM hold h JOIN customer_order o ON o.id = h.order_id WHERE o.state = 'completed'`,
  // Every order was offered, and most were declined at first; what is in work by the half of those not accepted.
  `INSERT INTO quotation (id, number, order_id, customer_id, order_version, content, content_hash, total_amount, currency, valid_until, made_by_id, made_at)
   SELECT md5('quotation ' || number)::uuid, 'Q-2026-' || right(number, 5), id, customer_id, 1, '[]', sha256(number::bytea), 42000, 'EUR', current_date + 30, ${id("person", "1")}, recorded_at
     FROM customer_order WHERE state <> 'requested'`,
  `INSERT INTO agreement (quotation_id, order_id, customer_id, answer, content_hash, purchase_order, remark, came_by, said_by_name, said_at)
   SELECT q.id, o.id, o.customer_id, 'declined', q.content_hash, '', '', 'link', 'C', q.made_at
     FROM quotation q JOIN customer_order o ON o.id = q.order_id WHERE o.state <> 'recorded' OR right(o.number, 2)::int % 16 = 1`,
  `INSERT INTO nonconformity (number, kind, state, title, description, subject_kind, subject_name, customer_id, opened_at)
   SELECT 'N-2026-' || lpad(n::text, 4, '0'), CASE WHEN n % 3 = 0 THEN 'complaint' ELSE 'nonconforming-work' END,
          CASE WHEN n > ${Math.ceil(size.orders / 20)} - 4 THEN 'open' ELSE 'closed' END, 'Title', 'What', 'laboratory', 'laboratory', ${id("customer", "1")}, now()
     FROM generate_series(1, ${Math.ceil(size.orders / 20)}) AS n`,
];

/**
 * Certificates of what is finished. The newest, those of the customer who is asked, and those whose serial holds what is
 * asked for, have a whole content, since a page of the list reads it; the others none.
 */
const papers = (content: string, size: Size): readonly string[] => [
  `INSERT INTO certificate (id, number, customer_id, order_id, sensor_id, run_id, evaluation_id, content, content_hash, token, signed_by_id, signed_at)
   SELECT md5('certificate ' || n)::uuid, 'C-2026-' || lpad(n::text, 6, '0'), customer_id, order_id, id, ${id("run", "1")}, ${id("evaluation", "1")},
          CASE WHEN n > total - 800 OR customer_id = ${id("customer", "7")} OR serial_key ~ '${serialMiddleOf(size)}|${middleOf(size)}' THEN replace(${quoted(content)}, 'C-BENCH', 'C-2026-' || lpad(n::text, 6, '0')) ELSE '{}' END,
          sha256(n::text::bytea), translate(encode(sha256(n::text::bytea), 'base64'), '+/=', '-_'), ${id("person", "3")}, now() - interval '1 minute' * (total - n)
     FROM (SELECT (row_number() OVER (ORDER BY s.tag))::int AS n, (count(*) OVER ())::int AS total, s.id, s.customer_id, s.serial_key, l.order_id
             FROM sensor s JOIN order_line l ON l.id = s.order_line_id WHERE s.state IN ('issued', 'collected')) AS s`,
  // The document of the newest three is still to be made. Triggers are off here.
  "INSERT INTO certificate_pending (certificate_id) SELECT id FROM certificate ORDER BY signed_at DESC LIMIT 3",
  `INSERT INTO certificate_file (certificate_id, customer_id, media_type, bytes, sha256, renderer_version, rendered_at)
   SELECT id, customer_id, 'application/pdf', '\\x25', content_hash, '1', now() FROM certificate
    WHERE id NOT IN (SELECT certificate_id FROM certificate_pending)`,
  `INSERT INTO mail_message (id, kind, message_id, recipient, subject, body, enqueued_at)
   SELECT md5('mail ' || o.number || k)::uuid, 'due-digest', '<' || o.number || '.' || k || '@example.org>', 'c@example.org', 'About ' || o.number, 'Text', o.recorded_at + interval '1 second' * k
     FROM customer_order o CROSS JOIN generate_series(1, 4) AS k`,
  `INSERT INTO mail_attempt (mail_message_id, outcome, transport, detail, happened_at)
   SELECT id, 'sent', 'smtp', '250', enqueued_at FROM mail_message`,
];

/** What was collected left in parcels and was invoiced, but for the last few orders; what is here lies in places. */
const after = (size: Size): readonly string[] => [
  `INSERT INTO storage_place (id, code, name) SELECT ${id("place", "n")}, 'P-' || n, 'Shelf ' || n FROM generate_series(1, 20) AS n`,
  `INSERT INTO custody_event (sensor_id, customer_id, kind, place_id, happened_at)
   SELECT id, customer_id, 'stored', ${id("place", "1 + (right(tag, 2))::int % 20")}, now() FROM sensor`,
  `INSERT INTO custody_event (sensor_id, customer_id, kind, happened_at) SELECT id, customer_id, 'handed-over', now() FROM sensor WHERE state = 'collected'`,
  `INSERT INTO shipment (id, number, order_id, customer_id, handed_over, address, packed_by_id, packed_at)
   SELECT md5('shipment ' || o.number)::uuid, 'S-2026-' || right(o.number, 5), o.id, o.customer_id, 'in-person', '1 Street', ${id("person", "1")}, o.recorded_at
     FROM customer_order o WHERE o.state = 'completed'`,
  `INSERT INTO shipment_sensor (shipment_id, sensor_id, customer_id)
   SELECT md5('shipment ' || o.number)::uuid, s.id, s.customer_id
     FROM sensor s JOIN order_line l ON l.id = s.order_line_id JOIN customer_order o ON o.id = l.order_id WHERE o.state = 'completed'`,
  `INSERT INTO order_document (order_id, customer_id, kind, number, content, media_type, bytes, sha256, made_by_id, made_at)
   SELECT order_id, customer_id, 'delivery-note', number, '{}', 'application/pdf', '\\x25', sha256('\\x25'), packed_by_id, packed_at FROM shipment`,
  `INSERT INTO invoicing_file (id, number, rows, bytes, sha256, made_by_id, made_at)
   SELECT ${id("file", "n")}, 'I-2026-' || lpad(n::text, 4, '0'), 1, '\\x25', sha256('\\x25'), ${id("person", "1")}, now() FROM generate_series(1, ${Math.ceil(size.orders / 50)}) AS n`,
  `INSERT INTO invoicing_row (invoicing_file_id, order_id, sensor_id, key, amount)
   SELECT ${id("file", "1")}, l.order_id, s.id, 'point', 4200
     FROM sensor s JOIN order_line l ON l.id = s.order_line_id JOIN customer_order o ON o.id = l.order_id
    WHERE s.state = 'collected' AND o.state = 'completed' AND right(o.number, 5)::int <= ${size.orders - size.inWork - 10}`,
  // Triggers are off here.
  "UPDATE sensor SET is_invoiced = true WHERE id IN (SELECT sensor_id FROM invoicing_row)",
];

/**
 * A laboratory of that size, invented, by set-based SQL. Foreign keys and triggers are not asked row by row; whatever is
 * generated, indexed and guarded by row-level security is as it is in the product.
 */
export const fillLaboratory = async (admin: pg.Client, size: Size, content: string): Promise<void> => {
  await admin.query("BEGIN");
  await admin.query("SET LOCAL session_replication_role = replica");
  // Some guards hold even so. Nothing is written here afterwards.
  await admin.query(`DO $$ DECLARE relation regclass; BEGIN
    FOR relation IN SELECT oid FROM pg_class WHERE relnamespace = 'public'::regnamespace AND relkind = 'r' LOOP
      EXECUTE format('ALTER TABLE %s DISABLE TRIGGER USER', relation);
    END LOOP; END $$`);
  for (const statement of [
    people,
    ...orders(size),
    ...furnaces,
    ...work(size),
    ...papers(content, size),
    ...after(size),
  ])
    await admin.query(statement);
  await admin.query("COMMIT");
  await admin.query("VACUUM (ANALYZE)");
};
