-- Privileges, append-only evidence, row-level security, the audit chain and gapless numbers.
-- Runs as emfolio_owner, which owns everything; the product signs in as a member of emfolio_runtime, which owns nothing.

-- ── The scope of a transaction ─────────────────────────────────────────────────────────────────────────────────────
-- Set per transaction by the product: app.scope = laboratory | customer, app.customer_id. Unset: no rows.

CREATE FUNCTION app_is_laboratory() RETURNS boolean
LANGUAGE sql STABLE PARALLEL SAFE SET search_path = pg_catalog, pg_temp
RETURN coalesce(current_setting('app.scope', true) = 'laboratory', false);

CREATE FUNCTION app_customer_id() RETURNS uuid
LANGUAGE sql STABLE PARALLEL SAFE SET search_path = pg_catalog, pg_temp
RETURN CASE WHEN current_setting('app.scope', true) = 'customer'
            THEN nullif(current_setting('app.customer_id', true), '')::uuid END;

REVOKE ALL ON FUNCTION app_is_laboratory(), app_customer_id() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION app_is_laboratory(), app_customer_id() TO emfolio_runtime;

-- ── Privileges ─────────────────────────────────────────────────────────────────────────────────────────────────────

GRANT SELECT, INSERT, UPDATE ON
  laboratory, first_access, customer, customer_order, order_line, order_setpoint, sensor, intake,
  equipment, furnace, furnace_configuration, characterisation, run, run_setpoint, load_place
TO emfolio_runtime;

-- A draft may lose its parts, a person a role; nothing else of the working tables is ever deleted.
GRANT DELETE ON order_line, order_setpoint, run_setpoint, load_place, person_role TO emfolio_runtime;

-- Whose person somebody is never changes: a customer's person would become staff.
GRANT SELECT, INSERT ON person TO emfolio_runtime;
GRANT UPDATE (email, name, password_hash, active, session_epoch, version) ON person TO emfolio_runtime;
GRANT SELECT, INSERT ON person_role, sign_in_attempt TO emfolio_runtime;

GRANT SELECT, INSERT ON
  calibration, tip_check, scan_block, scan_block_channel, stability_window, sensor_setpoint_state,
  evaluation, result, review_decision, certificate, certificate_file
TO emfolio_runtime;

GRANT USAGE ON SEQUENCE
  tip_check_id_seq, stability_window_id_seq, sensor_setpoint_state_id_seq, review_decision_id_seq, sign_in_attempt_id_seq
TO emfolio_runtime;

-- Written through functions only.
GRANT SELECT ON audit_event, audit_head TO emfolio_runtime;

-- ── Evidence is append-only ────────────────────────────────────────────────────────────────────────────────────────

CREATE FUNCTION refuse_change() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  RAISE EXCEPTION '% is append-only: % refused', TG_TABLE_NAME, TG_OP
    USING ERRCODE = 'insufficient_privilege', HINT = 'Say what changed in a later row.';
END $$;

-- The head of the chain moves by one step and never goes away.
CREATE FUNCTION guard_audit_head() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF NEW.id <> OLD.id OR NEW.sequence <> OLD.sequence + 1 THEN
    RAISE EXCEPTION 'audit_head moves by one event at a time' USING ERRCODE = 'insufficient_privilege';
  END IF;
  RETURN NEW;
END $$;

REVOKE ALL ON FUNCTION refuse_change(), guard_audit_head() FROM PUBLIC;

DO $$
DECLARE
  evidence text;
BEGIN
  FOREACH evidence IN ARRAY ARRAY[
    'calibration', 'tip_check', 'scan_block', 'scan_block_channel', 'stability_window', 'sensor_setpoint_state',
    'evaluation', 'result', 'review_decision', 'certificate', 'certificate_file', 'audit_event'
  ] LOOP
    EXECUTE format('CREATE TRIGGER refuse_change BEFORE UPDATE OR DELETE ON %I FOR EACH ROW EXECUTE FUNCTION refuse_change()', evidence);
    EXECUTE format('CREATE TRIGGER refuse_truncate BEFORE TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', evidence);
    -- ALWAYS: also in session_replication_role = replica.
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER refuse_change', evidence);
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER refuse_truncate', evidence);
  END LOOP;
END $$;

CREATE TRIGGER guard_step BEFORE UPDATE ON audit_head FOR EACH ROW EXECUTE FUNCTION guard_audit_head();
CREATE TRIGGER refuse_change BEFORE DELETE ON audit_head FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER refuse_truncate BEFORE TRUNCATE ON audit_head FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
ALTER TABLE audit_head ENABLE ALWAYS TRIGGER guard_step;
ALTER TABLE audit_head ENABLE ALWAYS TRIGGER refuse_change;
ALTER TABLE audit_head ENABLE ALWAYS TRIGGER refuse_truncate;

INSERT INTO audit_head (id, sequence, hash) VALUES (1, 0, decode(repeat('00', 32), 'hex'));

-- ── Row-level security ─────────────────────────────────────────────────────────────────────────────────────────────
-- FORCE: for the owner too. A migration that changes rows must say NO FORCE before and FORCE after, or it sees none.

DO $$
DECLARE
  relation text;
BEGIN
  FOR relation IN SELECT tablename FROM pg_tables WHERE schemaname = 'public' AND tablename <> '_prisma_migrations' LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', relation);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', relation);
    EXECUTE format('CREATE POLICY laboratory ON %I TO emfolio_runtime
                    USING ((SELECT app_is_laboratory())) WITH CHECK ((SELECT app_is_laboratory()))', relation);
  END LOOP;
  -- What carries its customer with it: a customer reads its own. No customer writes any table.
  FOREACH relation IN ARRAY ARRAY[
    'customer_order', 'order_line', 'order_setpoint', 'sensor', 'intake', 'load_place', 'sensor_setpoint_state',
    'result', 'certificate', 'certificate_file', 'person'
  ] LOOP
    EXECUTE format('CREATE POLICY customer ON %I FOR SELECT TO emfolio_runtime
                    USING (customer_id = (SELECT app_customer_id()))', relation);
  END LOOP;
END $$;

CREATE POLICY customer ON customer FOR SELECT TO emfolio_runtime USING (id = (SELECT app_customer_id()));

CREATE POLICY customer ON person_role FOR SELECT TO emfolio_runtime
  USING (EXISTS (SELECT FROM person WHERE person.id = person_id AND person.customer_id = (SELECT app_customer_id())));

-- The head of every certificate.
CREATE POLICY customer ON laboratory FOR SELECT TO emfolio_runtime
  USING (EXISTS (SELECT FROM customer WHERE customer.id = (SELECT app_customer_id())));

-- A run is shown to whoever has a sensor in its load.
CREATE POLICY customer ON run FOR SELECT TO emfolio_runtime
  USING (EXISTS (SELECT FROM load_place WHERE load_place.run_id = run.id
                 AND load_place.customer_id = (SELECT app_customer_id())));

CREATE POLICY customer ON run_setpoint FOR SELECT TO emfolio_runtime
  USING (EXISTS (SELECT FROM load_place WHERE load_place.run_id = run_setpoint.run_id
                 AND load_place.customer_id = (SELECT app_customer_id())));

CREATE POLICY customer ON scan_block FOR SELECT TO emfolio_runtime
  USING (EXISTS (SELECT FROM load_place WHERE load_place.run_id = scan_block.run_id
                 AND load_place.customer_id = (SELECT app_customer_id())));

-- Its own channels, and the laboratory's (references, zero) of the same run; never another customer's.
CREATE POLICY customer ON scan_block_channel FOR SELECT TO emfolio_runtime
  USING (customer_id = (SELECT app_customer_id())
         OR (customer_id IS NULL
             AND EXISTS (SELECT FROM load_place WHERE load_place.run_id = scan_block_channel.run_id
                         AND load_place.customer_id = (SELECT app_customer_id()))));

-- What the functions below touch, and nothing else, their owner may see.
CREATE POLICY functions ON audit_head TO emfolio_owner USING (true) WITH CHECK (true);
CREATE POLICY functions ON audit_event FOR INSERT TO emfolio_owner WITH CHECK (true);
CREATE POLICY functions ON counter TO emfolio_owner USING (true) WITH CHECK (true);
CREATE POLICY functions ON person FOR SELECT TO emfolio_owner USING (true);

-- ── The audit chain ────────────────────────────────────────────────────────────────────────────────────────────────

-- Length first, so that no text can move from one field to the next unnoticed.
CREATE FUNCTION audit_field(field bytea) RETURNS bytea
LANGUAGE sql IMMUTABLE STRICT SET search_path = pg_catalog, pg_temp
RETURN int8send(octet_length(field)::int8) || field;

REVOKE ALL ON FUNCTION audit_field(bytea) FROM PUBLIC;

-- Appends one event under the locked head; to be called last in a transaction. The time is the database's, read under
-- the lock (now() would be the start of the transaction), in microseconds.
CREATE FUNCTION audit_append(actor_id text, action text, entity_kind text, entity_id text, payload text) RETURNS bigint
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  head public.audit_head%ROWTYPE;
  place bigint;
  moment bigint;
  digest bytea;
BEGIN
  IF NOT public.app_is_laboratory() THEN
    -- A customer's people act in their own name only.
    PERFORM FROM public.person WHERE person.id::text = audit_append.actor_id AND person.customer_id = public.app_customer_id();
    IF NOT FOUND THEN
      RAISE EXCEPTION 'no scope, or an actor outside of it' USING ERRCODE = 'insufficient_privilege';
    END IF;
  END IF;
  SELECT * INTO STRICT head FROM public.audit_head WHERE id = 1 FOR UPDATE;
  place := head.sequence + 1;
  moment := (extract(epoch FROM clock_timestamp()) * 1000000)::bigint;
  digest := sha256(head.hash
    || public.audit_field(int8send(place)) || public.audit_field(int8send(moment))
    || public.audit_field(convert_to(actor_id, 'UTF8')) || public.audit_field(convert_to(action, 'UTF8'))
    || public.audit_field(convert_to(entity_kind, 'UTF8')) || public.audit_field(convert_to(entity_id, 'UTF8'))
    || public.audit_field(convert_to(payload, 'UTF8')));
  INSERT INTO public.audit_event
    VALUES (place, moment, actor_id, action, entity_kind, entity_id, payload, head.hash, digest);
  UPDATE public.audit_head SET sequence = place, hash = digest WHERE id = 1;
  RETURN place;
END $$;

REVOKE ALL ON FUNCTION audit_append(text, text, text, text, text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION audit_append(text, text, text, text, text) TO emfolio_runtime;

-- ── Gapless numbers ────────────────────────────────────────────────────────────────────────────────────────────────
-- A sequence leaves a gap when a transaction rolls back. The counter's row stays locked until the caller's commit.

CREATE FUNCTION next_number(counter_name text) RETURNS integer
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  taken integer;
BEGIN
  IF NOT public.app_is_laboratory() THEN
    RAISE EXCEPTION 'numbers are given by the laboratory' USING ERRCODE = 'insufficient_privilege';
  END IF;
  INSERT INTO public.counter AS known (name, value) VALUES (counter_name, 1)
    ON CONFLICT (name) DO UPDATE SET value = known.value + 1
    RETURNING known.value INTO taken;
  RETURN taken;
END $$;

REVOKE ALL ON FUNCTION next_number(text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION next_number(text) TO emfolio_runtime;

-- ── Roles ──────────────────────────────────────────────────────────────────────────────────────────────────────────

-- Nobody of a customer holds a role of the laboratory, nor the other way round.
CREATE FUNCTION guard_person_role() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  PERFORM FROM public.person
    WHERE person.id = NEW.person_id AND (person.customer_id IS NOT NULL) = (NEW.role = 'customer');
  IF NOT FOUND THEN
    RAISE EXCEPTION 'the role % does not fit this person', NEW.role USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;

REVOKE ALL ON FUNCTION guard_person_role() FROM PUBLIC;
CREATE TRIGGER guard_person_role BEFORE INSERT OR UPDATE ON person_role FOR EACH ROW EXECUTE FUNCTION guard_person_role();
ALTER TABLE person_role ENABLE ALWAYS TRIGGER guard_person_role;
