-- Orders and customers: privileges, append-only evidence, row-level security, words and references of the new tables.

-- ── Working tables may change; what was said, agreed, sent or handed over is only added to ─────────────────────────
GRANT SELECT, INSERT, UPDATE ON
  furnace_slot, storage_place, nonconformity, customer_address, person_session, second_factor, recovery_code,
  access_link, access_token, webhook, rate_count
TO emfolio_runtime;
GRANT SELECT, INSERT ON price_item, outside_identity TO emfolio_runtime;
-- What a price is never changes; that it ends does.
GRANT UPDATE (valid_until) ON price_item TO emfolio_runtime;
GRANT DELETE ON outside_identity, rate_count TO emfolio_runtime;
GRANT UPDATE (locked_until) ON person TO emfolio_runtime;

DO $$
DECLARE
  evidence text;
BEGIN
  FOREACH evidence IN ARRAY ARRAY[
    'order_review', 'order_note', 'order_difference', 'order_difference_settlement', 'order_change',
    'order_change_acknowledgment', 'quotation', 'order_document', 'customer_link', 'agreement', 'shipment',
    'shipment_sensor', 'invoicing_file', 'invoicing_row', 'sensor_photo', 'intake_file', 'custody_event', 'hold',
    'hold_release', 'question', 'answer', 'nonconformity_entry', 'sensor_anneal', 'repeat_measurement',
    'certificate_part', 'recall_interval', 'recall_reminder', 'webhook_message', 'webhook_attempt'
  ] LOOP
    EXECUTE format('GRANT SELECT, INSERT ON %I TO emfolio_runtime', evidence);
    EXECUTE format('CREATE TRIGGER refuse_change BEFORE UPDATE OR DELETE ON %I FOR EACH ROW EXECUTE FUNCTION refuse_change()', evidence);
    EXECUTE format('CREATE TRIGGER refuse_truncate BEFORE TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', evidence);
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER refuse_change', evidence);
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER refuse_truncate', evidence);
  END LOOP;
END $$;

GRANT USAGE ON SEQUENCE
  order_note_id_seq, order_change_acknowledgment_id_seq, custody_event_id_seq, nonconformity_entry_id_seq,
  recall_interval_id_seq, recall_reminder_id_seq, webhook_attempt_id_seq
TO emfolio_runtime;

-- ── Row-level security: all of it to the laboratory; to a customer what is theirs and meant for them ───────────────
DO $$
DECLARE
  relation text;
BEGIN
  FOREACH relation IN ARRAY ARRAY[
    'order_review', 'order_note', 'order_difference', 'order_difference_settlement', 'order_change',
    'order_change_acknowledgment', 'price_item', 'quotation', 'order_document', 'customer_link', 'agreement',
    'shipment', 'shipment_sensor', 'invoicing_file', 'invoicing_row', 'furnace_slot', 'sensor_photo', 'intake_file',
    'storage_place', 'custody_event', 'hold', 'hold_release', 'question', 'answer', 'nonconformity',
    'nonconformity_entry', 'sensor_anneal', 'repeat_measurement', 'certificate_part', 'customer_address',
    'recall_interval', 'recall_reminder', 'person_session', 'second_factor', 'recovery_code', 'access_link',
    'outside_identity', 'access_token', 'webhook', 'webhook_message', 'webhook_attempt', 'rate_count'
  ] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', relation);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', relation);
    EXECUTE format('CREATE POLICY laboratory ON %I TO emfolio_runtime
                    USING ((SELECT app_is_laboratory())) WITH CHECK ((SELECT app_is_laboratory()))', relation);
  END LOOP;
  -- A customer reads its own and writes no table: what it asks for, the laboratory's scope writes (Operation.scope).
  FOREACH relation IN ARRAY ARRAY[
    'order_difference', 'order_difference_settlement', 'order_change', 'quotation', 'order_document', 'agreement',
    'shipment', 'shipment_sensor', 'sensor_photo', 'custody_event', 'hold', 'hold_release', 'question', 'answer',
    'sensor_anneal', 'certificate_part', 'customer_address', 'recall_interval', 'recall_reminder'
  ] LOOP
    EXECUTE format('CREATE POLICY customer ON %I FOR SELECT TO emfolio_runtime
                    USING (customer_id = (SELECT app_customer_id()))', relation);
  END LOOP;
END $$;

CREATE POLICY customer ON order_note FOR SELECT TO emfolio_runtime
  USING (is_for_customer AND customer_id = (SELECT app_customer_id()));
CREATE POLICY customer ON nonconformity FOR SELECT TO emfolio_runtime
  USING (kind = 'complaint' AND customer_id = (SELECT app_customer_id()));
CREATE POLICY customer ON nonconformity_entry FOR SELECT TO emfolio_runtime
  USING (kind = 'customer-told' AND EXISTS (
    SELECT FROM nonconformity WHERE nonconformity.id = nonconformity_id
       AND nonconformity.kind = 'complaint' AND nonconformity.customer_id = (SELECT app_customer_id())));

-- ── Finite numbers ─────────────────────────────────────────────────────────────────────────────────────────────────
DO $$
DECLARE
  place record;
BEGIN
  FOR place IN
    SELECT columns.table_name, columns.column_name FROM information_schema.columns
    WHERE table_schema = 'public' AND data_type = 'double precision'
      AND NOT EXISTS (SELECT FROM pg_constraint
                      WHERE conname = columns.table_name || '_' || columns.column_name || '_finite')
  LOOP
    EXECUTE format('ALTER TABLE %1$I ADD CONSTRAINT %3$I CHECK (%2$I > ''-Infinity'' AND %2$I < ''Infinity'')',
                   place.table_name, place.column_name, place.table_name || '_' || place.column_name || '_finite');
  END LOOP;
END $$;

-- ── Stored bytes are what their hash says ──────────────────────────────────────────────────────────────────────────
ALTER TABLE order_document ADD CONSTRAINT order_document_is_its_hash CHECK (sha256 = sha256(bytes));
ALTER TABLE invoicing_file ADD CONSTRAINT invoicing_file_is_its_hash CHECK (sha256 = sha256(bytes));
ALTER TABLE sensor_photo ADD CONSTRAINT sensor_photo_is_its_hash CHECK (sha256 = sha256(bytes));
ALTER TABLE intake_file ADD CONSTRAINT intake_file_is_its_hash CHECK (sha256 = sha256(bytes));
ALTER TABLE quotation ADD CHECK (octet_length(content_hash) = 32);
ALTER TABLE agreement ADD CHECK (octet_length(content_hash) = 32);

-- ── Words ──────────────────────────────────────────────────────────────────────────────────────────────────────────
ALTER TABLE customer_order DROP CONSTRAINT customer_order_state_word;
ALTER TABLE person_role DROP CONSTRAINT person_role_role_word;
ALTER TABLE mail_message DROP CONSTRAINT mail_message_kind_word;
DO $$
DECLARE
  place text[];
BEGIN
  FOREACH place SLICE 1 IN ARRAY ARRAY[
    ['customer_order', 'state', 'requested|recorded|accepted|completed|cancelled'],
    ['customer_order', 'origin', 'desk|portal|interface|repeat'],
    ['customer_order', 'urgency', 'standard|express'],
    ['customer_order', 'rule_set', 'none|audited-heat-treatment'],
    ['order_line', 'performed_at', 'laboratory|customer-site'],
    ['intake', 'grounding', 'grounded|ungrounded|exposed|not-checked'],
    ['load_place', 'set_kind', 'as-received|after-anneal'],
    ['person_role', 'role', 'front-desk|technician|signatory|quality-manager|customer|customer-orderer|customer-manager'],
    -- The kinds of message are a closed list in the code.
    ['mail_message', 'kind', '[a-z]+(-[a-z]+)*'],
    ['order_review', 'occasion', 'acceptance|change'],
    ['order_note', 'kind', 'note|told-customer|from-customer'],
    ['price_item', 'per', 'point|sensor|line|order'],
    ['price_item', 'type_letter', '[A-Z]'],
    ['order_document', 'kind', 'quotation|acknowledgment|delivery-note'],
    ['customer_link', 'purpose', 'agree|answer'],
    ['agreement', 'answer', 'agreed|declined'],
    ['agreement', 'came_by', 'link|portal|desk'],
    ['shipment', 'handed_over', 'carrier|in-person'],
    ['custody_event', 'kind', 'received|stored|to-furnace|from-furnace|to-provider|from-provider|packed|handed-over|disposed'],
    ['hold', 'kind', 'condition|question|nonconforming-work'],
    ['hold_release', 'outcome', 'go-on|go-on-with-disclaimer|return-unmeasured'],
    ['answer', 'came_by', 'link|portal|desk'],
    ['nonconformity', 'kind', 'nonconforming-work|complaint'],
    ['nonconformity', 'state', 'open|examined|corrected|closed'],
    ['nonconformity', 'subject_kind', 'sensor|run|order|certificate|equipment|calibration|laboratory'],
    ['nonconformity_entry', 'kind', 'note|effect|hold|correction|customer-told|cause|corrective-action|resumed|closed|reopened'],
    ['repeat_measurement', 'counting_rule', 'later-counts|earlier-counts-if-they-agree'],
    ['certificate_part', 'set_kind', 'as-received|after-anneal'],
    ['customer_address', 'kind', 'delivery|invoice|site'],
    ['person_session', 'kind', 'full|bench'],
    ['person_session', 'came_by', 'password|openid'],
    ['access_link', 'purpose', 'invitation|reset'],
    ['webhook_attempt', 'outcome', 'delivered|failed|given-up']
  ] LOOP
    EXECUTE format('ALTER TABLE %1$I ADD CONSTRAINT %4$I CHECK (%2$I ~ %3$L)',
                   place[1], place[2], '^(' || place[3] || ')$', place[1] || '_' || place[2] || '_word');
  END LOOP;
END $$;

-- ── JSON text is JSON ──────────────────────────────────────────────────────────────────────────────────────────────
DO $$
DECLARE
  place text[];
BEGIN
  FOREACH place SLICE 1 IN ARRAY ARRAY[
    ['customer_order', 'promise_basis'], ['order_line', 'options'], ['intake', 'findings'],
    ['laboratory', 'intake_policy'], ['laboratory', 'account_policy'], ['order_review', 'answers'],
    ['order_review', 'capability'], ['order_change', 'before'], ['order_change', 'after'], ['quotation', 'content'],
    ['order_document', 'content'], ['question', 'choices'], ['nonconformity_entry', 'figures'],
    ['access_link', 'roles'], ['access_token', 'scopes'], ['webhook', 'topics'], ['webhook_message', 'body']
  ] LOOP
    EXECUTE format('ALTER TABLE %1$I ADD CONSTRAINT %3$I CHECK (%2$I::json IS NOT NULL)',
                   place[1], place[2], place[1] || '_' || place[2] || '_json');
  END LOOP;
END $$;

-- ── One table at a time ────────────────────────────────────────────────────────────────────────────────────────────
ALTER TABLE laboratory ADD CHECK (currency ~ '^[A-Z]{3}$');
ALTER TABLE order_line ADD CHECK ((performed_at = 'customer-site') = (site_address <> ''));
ALTER TABLE order_note ADD CHECK (text <> ''), ADD CHECK (num_nonnulls(said_by_id, nullif(said_by_name, '')) >= 1);
ALTER TABLE order_difference ADD CHECK (text <> '');
ALTER TABLE order_difference_settlement ADD CHECK (text <> ''), ADD CHECK (agreed_with <> '');
ALTER TABLE order_change ADD CHECK (reason <> ''), ADD CHECK (agreed_with <> '');
ALTER TABLE price_item ADD CHECK (key <> ''), ADD CHECK (title <> ''), ADD CHECK (amount >= 0), ADD CHECK (valid_from <= valid_until);
ALTER TABLE quotation ADD CHECK (total_amount >= 0), ADD CHECK (currency ~ '^[A-Z]{3}$');
ALTER TABLE customer_link ADD CHECK (expires_at > made_at), ADD CHECK (token_hash ~ '^[0-9a-f]{64}$');
ALTER TABLE agreement ADD CHECK (said_by_name <> '');
ALTER TABLE shipment ADD CHECK (handed_over = 'in-person' OR carrier <> '');
ALTER TABLE invoicing_file ADD CHECK (rows >= 1);
ALTER TABLE furnace_slot ADD CHECK (starts_at < ends_at);
ALTER TABLE sensor_photo ADD CHECK (width > 0), ADD CHECK (height > 0);
ALTER TABLE hold ADD CHECK (reason <> '');
ALTER TABLE hold_release ADD CHECK (reason <> ''), ADD CHECK ((outcome = 'go-on-with-disclaimer') = (disclaimer <> ''));
ALTER TABLE question ADD CHECK (text <> '');
ALTER TABLE answer ADD CHECK (choice <> '' OR text <> ''), ADD CHECK (said_by_name <> '');
ALTER TABLE nonconformity ADD CHECK (title <> ''), ADD CHECK (description <> ''),
  ADD CHECK (kind = 'nonconforming-work' OR customer_id IS NOT NULL);
ALTER TABLE nonconformity_entry ADD CHECK (text <> '');
ALTER TABLE sensor_anneal ADD CHECK (hours > 0), ADD CHECK (celsius BETWEEN 0 AND 3000), ADD CHECK (manner <> '');
ALTER TABLE repeat_measurement ADD CHECK (reason <> ''), ADD CHECK (run_id <> earlier_run_id);
ALTER TABLE certificate_part ADD CHECK (position >= 1);
ALTER TABLE recall_interval ADD CHECK (months BETWEEN 1 AND 120), ADD CHECK (notice_days BETWEEN 0 AND 365);
ALTER TABLE access_link ADD CHECK (expires_at > made_at), ADD CHECK (token_hash ~ '^[0-9a-f]{64}$'),
  ADD CHECK ((purpose = 'reset') = (person_id IS NOT NULL)), ADD CHECK (email = lower(email));
ALTER TABLE access_token ADD CHECK (token_hash ~ '^[0-9a-f]{64}$'), ADD CHECK (expires_at > made_at), ADD CHECK (name <> '');
ALTER TABLE webhook ADD CHECK (url ~ '^https?://');
ALTER TABLE rate_count ADD CHECK (count >= 1);
-- One secret counts at a time.
CREATE UNIQUE INDEX second_factor_one_in_force ON second_factor (person_id)
  WHERE confirmed_at IS NOT NULL AND ended_at IS NULL;
-- What stands once on an order is handed over once; a sensor's row is unique by the table's own constraint.
CREATE UNIQUE INDEX invoicing_row_once ON invoicing_row (order_id, key) WHERE sensor_id IS NULL;

-- ── References: with the customer, so that nothing of one hangs on something of another ────────────────────────────
ALTER TABLE hold ADD UNIQUE (id, customer_id);
ALTER TABLE question ADD UNIQUE (id, customer_id);
ALTER TABLE shipment ADD UNIQUE (id, customer_id);
ALTER TABLE quotation ADD UNIQUE (id, customer_id);
ALTER TABLE order_difference ADD UNIQUE (id, customer_id);
ALTER TABLE customer_address ADD UNIQUE (id, customer_id);
ALTER TABLE webhook ADD UNIQUE (id, customer_id);
ALTER TABLE certificate ADD UNIQUE (id, customer_id);

ALTER TABLE customer_order
  ADD FOREIGN KEY (repeats_order_id, customer_id) REFERENCES customer_order (id, customer_id),
  ADD FOREIGN KEY (delivery_address_id, customer_id) REFERENCES customer_address (id, customer_id),
  ADD FOREIGN KEY (invoice_address_id, customer_id) REFERENCES customer_address (id, customer_id);
ALTER TABLE order_line ADD FOREIGN KEY (provider_id) REFERENCES provider (id);

DO $$
DECLARE
  place text[];
BEGIN
  FOREACH place SLICE 1 IN ARRAY ARRAY[
    ['order_review', 'order_id', 'customer_order'], ['order_note', 'order_id', 'customer_order'],
    ['order_difference', 'order_id', 'customer_order'], ['order_change', 'order_id', 'customer_order'],
    ['order_difference_settlement', 'difference_id', 'order_difference'],
    ['quotation', 'order_id', 'customer_order'], ['order_document', 'order_id', 'customer_order'],
    ['customer_link', 'order_id', 'customer_order'], ['agreement', 'quotation_id', 'quotation'],
    ['agreement', 'order_id', 'customer_order'], ['shipment', 'order_id', 'customer_order'],
    ['shipment_sensor', 'shipment_id', 'shipment'], ['shipment_sensor', 'sensor_id', 'sensor'],
    ['sensor_photo', 'sensor_id', 'sensor'], ['intake_file', 'order_id', 'customer_order'],
    ['custody_event', 'sensor_id', 'sensor'], ['custody_event', 'shipment_id', 'shipment'],
    ['hold', 'order_id', 'customer_order'], ['hold', 'sensor_id', 'sensor'], ['hold_release', 'hold_id', 'hold'],
    ['question', 'order_id', 'customer_order'], ['question', 'sensor_id', 'sensor'], ['question', 'hold_id', 'hold'],
    ['answer', 'question_id', 'question'], ['sensor_anneal', 'sensor_id', 'sensor'],
    ['repeat_measurement', 'sensor_id', 'sensor'], ['certificate_part', 'certificate_id', 'certificate'],
    ['certificate_part', 'sensor_id', 'sensor'], ['webhook_message', 'webhook_id', 'webhook']
  ] LOOP
    EXECUTE format('ALTER TABLE %1$I ADD FOREIGN KEY (%2$I, customer_id) REFERENCES %3$I (id, customer_id)',
                   place[1], place[2], place[3]);
  END LOOP;
  FOREACH place SLICE 1 IN ARRAY ARRAY[
    ['customer_address', 'customer_id', 'customer'], ['recall_interval', 'customer_id', 'customer'],
    ['recall_reminder', 'customer_id', 'customer'], ['nonconformity', 'customer_id', 'customer'],
    ['access_link', 'customer_id', 'customer'], ['access_token', 'customer_id', 'customer'],
    ['webhook', 'customer_id', 'customer'],
    ['order_change_acknowledgment', 'change_id', 'order_change'], ['order_change_acknowledgment', 'run_id', 'run'],
    ['furnace_slot', 'furnace_id', 'furnace'], ['furnace_slot', 'order_id', 'customer_order'], ['furnace_slot', 'run_id', 'run'],
    ['invoicing_row', 'invoicing_file_id', 'invoicing_file'], ['invoicing_row', 'order_id', 'customer_order'],
    ['invoicing_row', 'sensor_id', 'sensor'], ['custody_event', 'place_id', 'storage_place'], ['custody_event', 'run_id', 'run'],
    ['hold', 'nonconformity_id', 'nonconformity'],
    ['repeat_measurement', 'earlier_run_id', 'run'], ['repeat_measurement', 'run_id', 'run'],
    ['certificate_part', 'run_id', 'run'], ['certificate_part', 'evaluation_id', 'evaluation'],
    ['recovery_code', 'second_factor_id', 'second_factor'],
    ['order_review', 'reviewed_by_id', 'person'], ['order_note', 'said_by_id', 'person'],
    ['order_difference', 'raised_by_id', 'person'], ['order_difference_settlement', 'settled_by_id', 'person'],
    ['order_change', 'changed_by_id', 'person'], ['order_change_acknowledgment', 'acknowledged_by_id', 'person'],
    ['price_item', 'recorded_by_id', 'person'], ['quotation', 'made_by_id', 'person'], ['order_document', 'made_by_id', 'person'],
    ['agreement', 'said_by_id', 'person'], ['shipment', 'packed_by_id', 'person'], ['invoicing_file', 'made_by_id', 'person'],
    ['furnace_slot', 'taken_by_id', 'person'], ['sensor_photo', 'taken_by_id', 'person'],
    ['intake_file', 'received_by_id', 'person'], ['custody_event', 'recorded_by_id', 'person'],
    ['hold', 'placed_by_id', 'person'], ['hold_release', 'released_by_id', 'person'], ['question', 'asked_by_id', 'person'],
    ['answer', 'said_by_id', 'person'], ['nonconformity', 'opened_by_id', 'person'], ['nonconformity_entry', 'said_by_id', 'person'],
    ['sensor_anneal', 'performed_by_id', 'person'], ['repeat_measurement', 'authorised_by_id', 'person'],
    ['recall_interval', 'set_by_id', 'person'], ['person_session', 'person_id', 'person'], ['second_factor', 'person_id', 'person'],
    ['access_link', 'person_id', 'person'], ['access_link', 'made_by_id', 'person'], ['outside_identity', 'person_id', 'person'],
    ['access_token', 'made_by_id', 'person'], ['webhook', 'made_by_id', 'person']
  ] LOOP
    EXECUTE format('ALTER TABLE %1$I ADD FOREIGN KEY (%2$I) REFERENCES %3$I (id)', place[1], place[2], place[3]);
  END LOOP;
END $$;

-- ── Roles of a customer's people: whoever reads, who may also order and answer, who may also invite ────────────────
CREATE OR REPLACE FUNCTION guard_person_role() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  PERFORM FROM public.person
    WHERE person.id = NEW.person_id
      AND (person.customer_id IS NOT NULL) = (NEW.role IN ('customer', 'customer-orderer', 'customer-manager'));
  IF NOT FOUND THEN
    RAISE EXCEPTION 'the role % does not fit this person', NEW.role USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_person_role() FROM PUBLIC;

-- Whoever of a customer was here before had every right that there was, and keeps it.
ALTER TABLE person_role NO FORCE ROW LEVEL SECURITY;
INSERT INTO person_role (person_id, role)
  SELECT person_id, further.role FROM person_role
   CROSS JOIN (VALUES ('customer-orderer'), ('customer-manager')) AS further (role)
   WHERE person_role.role = 'customer' ON CONFLICT DO NOTHING;
ALTER TABLE person_role FORCE ROW LEVEL SECURITY;

-- ── A furnace is taken by one at a time ────────────────────────────────────────────────────────────────────────────
CREATE FUNCTION guard_furnace_slot() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  -- Whoever else takes this furnace waits for this transaction.
  PERFORM pg_advisory_xact_lock(hashtextextended('furnace-slot ' || NEW.furnace_id::text, 0));
  IF NOT NEW.is_released AND EXISTS (
    SELECT FROM public.furnace_slot other
     WHERE other.furnace_id = NEW.furnace_id AND other.id <> NEW.id AND NOT other.is_released
       AND other.starts_at < NEW.ends_at AND NEW.starts_at < other.ends_at) THEN
    RAISE EXCEPTION 'the furnace is taken within this time' USING ERRCODE = 'exclusion_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_furnace_slot() FROM PUBLIC;
CREATE TRIGGER guard_furnace_slot BEFORE INSERT OR UPDATE ON furnace_slot FOR EACH ROW EXECUTE FUNCTION guard_furnace_slot();
ALTER TABLE furnace_slot ENABLE ALWAYS TRIGGER guard_furnace_slot;
