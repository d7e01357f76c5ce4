-- Lists and search at the size of years: 10 000 orders, 100 000 sensors.
--
-- Row-level security lets an index be used only by conditions whose operators are leakproof. lower(), LIKE and the
-- trigram operators are not; =, < and the bytewise comparisons of text_pattern_ops are. So what is searched for stands
-- in columns of its own, made by the database: in small letters and without what people leave out when they read a
-- number aloud; and once more backwards, for whoever knows only its end.

ALTER TABLE sensor
  ADD COLUMN serial_key text GENERATED ALWAYS AS (lower(translate(serial, ' -_/.', ''))) STORED,
  ADD COLUMN serial_tail text GENERATED ALWAYS AS (reverse(lower(translate(serial, ' -_/.', '')))) STORED;
ALTER TABLE customer_order
  ADD COLUMN purchase_order_key text GENERATED ALWAYS AS (lower(translate(purchase_order, ' -_/.', ''))) STORED,
  ADD COLUMN purchase_order_tail text GENERATED ALWAYS AS (reverse(lower(translate(purchase_order, ' -_/.', '')))) STORED;

CREATE INDEX sensor_serial_key ON sensor (serial_key text_pattern_ops);
CREATE INDEX sensor_serial_tail ON sensor (serial_tail text_pattern_ops);
CREATE INDEX sensor_tag_pattern ON sensor (tag text_pattern_ops);
CREATE INDEX order_purchase_order_key ON customer_order (purchase_order_key text_pattern_ops);
CREATE INDEX order_purchase_order_tail ON customer_order (purchase_order_tail text_pattern_ops);
CREATE INDEX order_number_pattern ON customer_order (number text_pattern_ops);
CREATE INDEX certificate_number_pattern ON certificate (number text_pattern_ops);
CREATE INDEX run_number_pattern ON run (number text_pattern_ops);
CREATE INDEX nonconformity_number_pattern ON nonconformity (number text_pattern_ops);
CREATE INDEX quotation_number_pattern ON quotation (number text_pattern_ops);
CREATE INDEX shipment_number_pattern ON shipment (number text_pattern_ops);

-- One list, one order: an index for each filter that would otherwise walk past most of the rows.
CREATE INDEX order_state_page ON customer_order (state, recorded_at, id);
CREATE INDEX order_customer_page ON customer_order (customer_id, recorded_at, id);
CREATE INDEX order_open_page ON customer_order (recorded_at, id) WHERE state IN ('requested', 'recorded', 'accepted');
CREATE INDEX order_express_page ON customer_order (recorded_at, id) WHERE urgency = 'express';
CREATE INDEX order_rule_set_page ON customer_order (rule_set, recorded_at, id) WHERE rule_set <> 'none';
CREATE INDEX order_promised_page ON customer_order (promised_on, id) WHERE state = 'accepted';
CREATE INDEX sensor_state_page ON sensor (state, tag);
CREATE INDEX sensor_customer_page ON sensor (customer_id, tag);
CREATE INDEX sensor_here_page ON sensor (tag) WHERE state <> 'collected';
CREATE INDEX certificate_page ON certificate (signed_at, id);
CREATE INDEX certificate_customer_page ON certificate (customer_id, signed_at, id);
CREATE INDEX run_page ON run (created_at, id);
CREATE INDEX run_state_page ON run (state, created_at, id);
CREATE INDEX mail_page ON mail_message (enqueued_at, id);
CREATE INDEX person_customer ON person (customer_id);
CREATE INDEX furnace_slot_time ON furnace_slot (ends_at) WHERE NOT is_released;
