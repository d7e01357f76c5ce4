-- What no row may say, whoever writes it; and references that cannot cross from one customer to another.

-- ── Finite numbers: no float8 holds NaN or an infinity (NaN compares greater than everything) ─────────────────────
DO $$
DECLARE
  place record;
BEGIN
  FOR place IN SELECT table_name, column_name FROM information_schema.columns
               WHERE table_schema = 'public' AND data_type = 'double precision' LOOP
    EXECUTE format('ALTER TABLE %1$I ADD CONSTRAINT %3$I CHECK (%2$I > ''-Infinity'' AND %2$I < ''Infinity'')',
                   place.table_name, place.column_name, place.table_name || '_' || place.column_name || '_finite');
  END LOOP;
END $$;

-- ── Digests are 32 bytes ───────────────────────────────────────────────────────────────────────────────────────────
DO $$
DECLARE
  place text[];
BEGIN
  FOREACH place SLICE 1 IN ARRAY ARRAY[
    ['audit_head', 'hash'], ['audit_event', 'previous_hash'], ['audit_event', 'hash'],
    ['certificate', 'content_hash'], ['certificate_file', 'sha256'],
    ['evaluation', 'blocks_digest'], ['evaluation', 'inputs_digest'], ['stability_window', 'blocks_digest'],
    ['scan_block', 'source_sha256'], ['scan_block', 'root'], ['scan_block_channel', 'leaf']
  ] LOOP
    EXECUTE format('ALTER TABLE %I ADD CHECK (octet_length(%I) = 32)', place[1], place[2]);
  END LOOP;
END $$;

-- ── Words ──────────────────────────────────────────────────────────────────────────────────────────────────────────
DO $$
DECLARE
  place text[];
BEGIN
  FOREACH place SLICE 1 IN ARRAY ARRAY[
    ['customer_order', 'state', 'recorded|accepted|completed|cancelled'],
    ['customer_order', 'decision_rule', 'none|simple|guarded'],
    ['order_line', 'protection', 'bare-wire|alumina-sheath|metal-sheath|other'],
    ['order_line', 'temperature_unit', 'C|F'],
    ['order_line', 'type_letter', '[A-Z]'],
    ['sensor', 'type_letter', '[A-Z]'],
    ['sensor', 'protection', 'bare-wire|alumina-sheath|metal-sheath|other'],
    ['sensor', 'state', 'received|loaded|measured|evaluated|in-review|issued|collected'],
    ['intake', 'condition', 'as-described|deviates'],
    ['intake', 'polarity', 'ok|reversed|not-checked'],
    ['intake', 'type_check', 'ok|other-type|not-checked'],
    ['equipment', 'kind', 'reference|voltmeter|scanner|junction'],
    ['equipment', 'state', 'in-service|suspect|retired'],
    ['calibration', 'route', 'nmi|accredited|in-house|other'],
    ['furnace_configuration', 'kind', 'bare-tube|equalising-block'],
    ['run', 'state', 'planned|measuring|submitted|returned|signed-off'],
    ['load_place', 'kind', 'sensor|reference|shorted'],
    ['scan_block', 'source', 'file|typed'],
    ['stability_window', 'origin', 'proposed|moved'],
    ['sensor_setpoint_state', 'state', 'measured|invalid|not-reached'],
    ['result', 'state', 'measured|invalid|not-reached'],
    ['review_decision', 'decision', 'submitted|returned|signed-off|second-look'],
    ['person_role', 'role', 'front-desk|technician|signatory|quality-manager|customer'],
    ['certificate', 'token', '[A-Za-z0-9_-]{43}']
  ] LOOP
    EXECUTE format('ALTER TABLE %1$I ADD CONSTRAINT %4$I CHECK (%2$I ~ %3$L)',
                   place[1], place[2], '^(' || place[3] || ')$', place[1] || '_' || place[2] || '_word');
  END LOOP;
END $$;

-- ── One table at a time ────────────────────────────────────────────────────────────────────────────────────────────
ALTER TABLE audit_head ADD CHECK (id = 1), ADD CHECK (sequence >= 0);
ALTER TABLE audit_event ADD CHECK (sequence >= 1), ADD CHECK (action <> '' AND entity_kind <> '');
ALTER TABLE laboratory ADD CHECK (id = 'laboratory');
ALTER TABLE counter ADD CHECK (value >= 1);
ALTER TABLE person ADD CHECK (email = lower(email) AND email LIKE '%_@_%');
ALTER TABLE customer_order
  ADD CHECK ((decision_rule = 'guarded') = (guard_band_ratio IS NOT NULL)),
  ADD CHECK (guard_band_ratio BETWEEN 0 AND 3),
  ADD CHECK (uncertainty_digits IN (1, 2)),
  ADD CHECK ((accepted_at IS NULL) = (accepted_by_id IS NULL));
ALTER TABLE order_line
  ADD CHECK (quantity BETWEEN 1 AND 1000), ADD CHECK (position >= 1),
  ADD CHECK ((tolerance_standard IS NULL) = (tolerance_class IS NULL));
ALTER TABLE order_setpoint
  ADD CHECK (position >= 1), ADD CHECK (typed <> ''), ADD CHECK (celsius BETWEEN -273.15 AND 3000);
ALTER TABLE sensor ADD CHECK (serial <> '');
ALTER TABLE intake ADD CHECK (loop_resistance_ohm >= 0), ADD CHECK (insulation_megaohm >= 0);
ALTER TABLE equipment ADD CHECK (particulars::json IS NOT NULL);
ALTER TABLE calibration ADD CHECK (due_on >= performed_on), ADD CHECK (findings::json IS NOT NULL);
ALTER TABLE furnace
  ADD CHECK (minimum_celsius < maximum_celsius), ADD CHECK (bore_millimetre > 0 AND length_millimetre > 0);
ALTER TABLE furnace_configuration ADD CHECK (places >= 1), ADD CHECK (immersion_millimetre > 0);
ALTER TABLE characterisation
  ADD CHECK (valid_until >= performed_on), ADD CHECK (uniformity_half_width_celsius >= 0), ADD CHECK (statement <> '');
ALTER TABLE run ADD CHECK (budget_inputs::json IS NOT NULL);
ALTER TABLE run_setpoint ADD CHECK (position >= 1), ADD CHECK (celsius BETWEEN -273.15 AND 3000);
ALTER TABLE load_place
  ADD CHECK (immersion_millimetre > 0),
  ADD CHECK ((kind = 'sensor') = (sensor_id IS NOT NULL)),
  ADD CHECK ((kind = 'reference') = (equipment_id IS NOT NULL)),
  -- Without its owner a customer's channel would be shown to the others of the run.
  ADD CHECK ((kind = 'sensor') = (customer_id IS NOT NULL));
ALTER TABLE scan_block
  ADD CHECK (sequence >= 1), ADD CHECK (reading_count >= 1),
  ADD CHECK (octet_length(leaves) >= 32 AND octet_length(leaves) % 32 = 0);
ALTER TABLE scan_block_channel
  ADD CHECK (ordinal >= 0), ADD CHECK (channel <> ''), ADD CHECK (count >= 1),
  ADD CHECK (octet_length(times) = 8 * count::bigint),
  ADD CHECK (octet_length("values") = 8 * count::bigint),
  ADD CHECK (octet_length(polarity) = count),
  ADD CHECK (octet_length(salt) = 16);
ALTER TABLE stability_window ADD CHECK (from_seconds < to_seconds), ADD CHECK (assessment::json IS NOT NULL);
ALTER TABLE sensor_setpoint_state ADD CHECK (state = 'measured' OR reason <> '');
ALTER TABLE evaluation
  ADD CHECK (sequence >= 1), ADD CHECK (engine_version <> ''), ADD CHECK (evidence::json IS NOT NULL),
  ADD CHECK (findings::json IS NOT NULL);
ALTER TABLE result ADD CHECK (point::json IS NOT NULL);
ALTER TABLE review_decision ADD CHECK (decision <> 'returned' OR reason <> '');
ALTER TABLE certificate ADD CHECK (content::json IS NOT NULL);
ALTER TABLE certificate_file ADD CHECK (octet_length(bytes) > 0);

-- ── A row and what it belongs to have the same customer, and the same run ──────────────────────────────────────────
ALTER TABLE customer_order ADD UNIQUE (id, customer_id);
ALTER TABLE order_line ADD UNIQUE (id, customer_id);
ALTER TABLE sensor ADD UNIQUE (id, customer_id);
ALTER TABLE certificate ADD UNIQUE (id, customer_id);
ALTER TABLE run_setpoint ADD UNIQUE (id, run_id);
ALTER TABLE load_place ADD UNIQUE (id, run_id);
ALTER TABLE scan_block ADD UNIQUE (id, run_id);
ALTER TABLE evaluation ADD UNIQUE (id, run_id);

ALTER TABLE order_line ADD FOREIGN KEY (order_id, customer_id) REFERENCES customer_order (id, customer_id);
ALTER TABLE order_setpoint ADD FOREIGN KEY (order_line_id, customer_id) REFERENCES order_line (id, customer_id);
ALTER TABLE sensor ADD FOREIGN KEY (order_line_id, customer_id) REFERENCES order_line (id, customer_id);
ALTER TABLE intake ADD FOREIGN KEY (sensor_id, customer_id) REFERENCES sensor (id, customer_id);
ALTER TABLE load_place ADD FOREIGN KEY (sensor_id, customer_id) REFERENCES sensor (id, customer_id);
ALTER TABLE tip_check ADD FOREIGN KEY (load_place_id, run_id) REFERENCES load_place (id, run_id);
ALTER TABLE scan_block ADD FOREIGN KEY (run_id) REFERENCES run (id);
ALTER TABLE scan_block_channel
  ADD FOREIGN KEY (block_id, run_id) REFERENCES scan_block (id, run_id),
  ADD FOREIGN KEY (customer_id) REFERENCES customer (id);
ALTER TABLE stability_window ADD FOREIGN KEY (setpoint_id, run_id) REFERENCES run_setpoint (id, run_id);
ALTER TABLE sensor_setpoint_state
  ADD FOREIGN KEY (sensor_id, customer_id) REFERENCES sensor (id, customer_id),
  ADD FOREIGN KEY (setpoint_id, run_id) REFERENCES run_setpoint (id, run_id);
ALTER TABLE evaluation ADD FOREIGN KEY (run_id) REFERENCES run (id);
ALTER TABLE result
  ADD FOREIGN KEY (evaluation_id, run_id) REFERENCES evaluation (id, run_id),
  ADD FOREIGN KEY (sensor_id, customer_id) REFERENCES sensor (id, customer_id),
  ADD FOREIGN KEY (setpoint_id, run_id) REFERENCES run_setpoint (id, run_id);
ALTER TABLE review_decision
  ADD FOREIGN KEY (evaluation_id, run_id) REFERENCES evaluation (id, run_id),
  ADD FOREIGN KEY (sensor_id) REFERENCES sensor (id);
ALTER TABLE certificate
  ADD FOREIGN KEY (order_id, customer_id) REFERENCES customer_order (id, customer_id),
  ADD FOREIGN KEY (sensor_id, customer_id) REFERENCES sensor (id, customer_id),
  ADD FOREIGN KEY (evaluation_id, run_id) REFERENCES evaluation (id, run_id);
ALTER TABLE certificate_file ADD FOREIGN KEY (certificate_id, customer_id) REFERENCES certificate (id, customer_id);

-- ── Equipment and people ───────────────────────────────────────────────────────────────────────────────────────────
ALTER TABLE run
  ADD FOREIGN KEY (configuration_id) REFERENCES furnace_configuration (id),
  ADD FOREIGN KEY (voltmeter_id) REFERENCES equipment (id),
  ADD FOREIGN KEY (scanner_id) REFERENCES equipment (id),
  ADD FOREIGN KEY (performer_id) REFERENCES person (id);
ALTER TABLE load_place
  ADD FOREIGN KEY (equipment_id) REFERENCES equipment (id),
  ADD FOREIGN KEY (junction_id) REFERENCES equipment (id);
ALTER TABLE customer_order
  ADD FOREIGN KEY (recorded_by_id) REFERENCES person (id), ADD FOREIGN KEY (accepted_by_id) REFERENCES person (id);
ALTER TABLE intake ADD FOREIGN KEY (taken_in_by_id) REFERENCES person (id);
ALTER TABLE calibration ADD FOREIGN KEY (recorded_by_id) REFERENCES person (id);
ALTER TABLE tip_check ADD FOREIGN KEY (checked_by_id) REFERENCES person (id);
ALTER TABLE scan_block ADD FOREIGN KEY (received_by_id) REFERENCES person (id);
ALTER TABLE stability_window ADD FOREIGN KEY (accepted_by_id) REFERENCES person (id);
ALTER TABLE sensor_setpoint_state ADD FOREIGN KEY (said_by_id) REFERENCES person (id);
ALTER TABLE evaluation ADD FOREIGN KEY (evaluated_by_id) REFERENCES person (id);
ALTER TABLE review_decision ADD FOREIGN KEY (decided_by_id) REFERENCES person (id);
ALTER TABLE certificate ADD FOREIGN KEY (signed_by_id) REFERENCES person (id);
