-- Signing, documents, seal: privileges, append-only evidence, row-level security, words and references of the new tables.

-- ── What was said, signed, opened or ended is only added to; a session of signing runs on ──────────────────────────
GRANT SELECT, INSERT, UPDATE ON signing_session TO emfolio_runtime;

DO $$
DECLARE
  evidence text;
BEGIN
  FOREACH evidence IN ARRAY ARRAY[
    'authorisation', 'authorisation_withdrawal', 'signature', 'opinion', 'review_opening', 'review_sample',
    'review_comment', 'certificate_attempt', 'amendment', 'amendment_decision', 'certificate_ending', 'seal_key',
    'seal_key_ending'
  ] LOOP
    EXECUTE format('GRANT SELECT, INSERT ON %I TO emfolio_runtime', evidence);
    EXECUTE format('CREATE TRIGGER refuse_change BEFORE UPDATE OR DELETE ON %I FOR EACH ROW EXECUTE FUNCTION refuse_change()', evidence);
    EXECUTE format('CREATE TRIGGER refuse_truncate BEFORE TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', evidence);
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER refuse_change', evidence);
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER refuse_truncate', evidence);
  END LOOP;
END $$;

GRANT USAGE ON SEQUENCE
  opinion_id_seq, review_opening_id_seq, review_comment_id_seq, certificate_attempt_id_seq
TO emfolio_runtime;

-- ── Row-level security: all of it to the laboratory; to a customer what became of their certificates ───────────────
DO $$
DECLARE
  relation text;
BEGIN
  FOREACH relation IN ARRAY ARRAY[
    'authorisation', 'authorisation_withdrawal', 'signing_session', 'signature', 'opinion', 'review_opening',
    'review_sample', 'review_comment', 'certificate_attempt', 'amendment', 'amendment_decision', 'certificate_ending',
    'seal_key', 'seal_key_ending'
  ] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', relation);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', relation);
    EXECUTE format('CREATE POLICY laboratory ON %I TO emfolio_runtime
                    USING ((SELECT app_is_laboratory())) WITH CHECK ((SELECT app_is_laboratory()))', relation);
  END LOOP;
END $$;
CREATE POLICY customer ON certificate_ending FOR SELECT TO emfolio_runtime
  USING (customer_id = (SELECT app_customer_id()));

-- ── Finite numbers ─────────────────────────────────────────────────────────────────────────────────────────────────
ALTER TABLE authorisation
  ADD CONSTRAINT authorisation_from_celsius_finite CHECK (from_celsius > '-Infinity' AND from_celsius < 'Infinity'),
  ADD CONSTRAINT authorisation_to_celsius_finite CHECK (to_celsius > '-Infinity' AND to_celsius < 'Infinity');

-- ── Words ──────────────────────────────────────────────────────────────────────────────────────────────────────────
DO $$
DECLARE
  place text[];
BEGIN
  FOREACH place SLICE 1 IN ARRAY ARRAY[
    ['authorisation', 'activity', 'sign-off|opinion'],
    ['authorisation', 'scope', 'inside|any'],
    ['authorisation', 'type_letters', '[A-Z]*'],
    ['signature', 'meaning', 'reviewed-and-authorised'],
    ['signature', 'means', 'password\+code|password|code'],
    ['review_comment', 'place', '[a-z]+(-[a-z]+)*'],
    ['certificate_attempt', 'step', 'render|attach|seal|store'],
    ['amendment', 'kind', 'amendment|replacement'],
    ['amendment_decision', 'outcome', 'signed-off|dropped'],
    ['certificate_ending', 'kind', 'amended|replaced|withdrawn'],
    ['seal_key', 'origin', 'self-issued|file'],
    ['seal_key', 'purpose', 'seal|timestamp'],
    ['seal_key_ending', 'kind', 'retired|revoked']
  ] LOOP
    EXECUTE format('ALTER TABLE %1$I ADD CONSTRAINT %4$I CHECK (%2$I ~ %3$L)',
                   place[1], place[2], '^(' || place[3] || ')$', place[1] || '_' || place[2] || '_word');
  END LOOP;
END $$;

-- ── One table at a time ────────────────────────────────────────────────────────────────────────────────────────────
ALTER TABLE laboratory ADD CONSTRAINT laboratory_signing_policy_json CHECK (signing_policy::json IS NOT NULL);
ALTER TABLE amendment ADD CONSTRAINT amendment_corrections_json CHECK (corrections::json IS NOT NULL), ADD CHECK (reason <> '');
ALTER TABLE amendment_decision ADD CHECK (outcome = 'signed-off' OR reason <> '');
ALTER TABLE authorisation ADD CHECK (basis <> ''), ADD CHECK (from_celsius < to_celsius), ADD CHECK (valid_from <= valid_until);
ALTER TABLE authorisation_withdrawal ADD CHECK (reason <> '');
ALTER TABLE signature ADD CHECK (printed_name <> ''), ADD CHECK (act_id <> ''),
  ADD CHECK (octet_length(reviewed_hash) = 32), ADD CHECK (octet_length(content_hash) = 32);
ALTER TABLE opinion ADD CHECK (text = '' OR basis <> '');
ALTER TABLE review_sample ADD CHECK (octet_length(seed) = 32);
ALTER TABLE review_comment ADD CHECK (text <> ''), ADD CHECK (setpoint_id IS NULL OR sensor_id IS NOT NULL),
  ADD CHECK (NOT settles OR answers_id IS NOT NULL);
ALTER TABLE certificate_ending ADD CHECK (reason <> ''), ADD CHECK ((kind = 'withdrawn') = (successor_id IS NULL)),
  ADD CHECK (successor_id <> certificate_id);
ALTER TABLE seal_key ADD CHECK (fingerprint ~ '^[0-9a-f]{64}$'), ADD CHECK (not_before < not_after),
  ADD CONSTRAINT seal_key_is_its_fingerprint CHECK (fingerprint = encode(sha256(certificate_der), 'hex'));
ALTER TABLE seal_key_ending ADD CHECK (reason <> '');
ALTER TABLE certificate_file ADD CHECK (octet_length(unsealed_sha256) = 32),
  ADD CHECK (seal_fingerprint ~ '^[0-9a-f]{64}$'), ADD CHECK ((unsealed_sha256 IS NULL) = (seal_fingerprint IS NULL));

-- ── References ─────────────────────────────────────────────────────────────────────────────────────────────────────
ALTER TABLE amendment ADD UNIQUE (id, customer_id);
DO $$
DECLARE
  place text[];
BEGIN
  FOREACH place SLICE 1 IN ARRAY ARRAY[
    ['signature', 'certificate_id', 'certificate'], ['opinion', 'sensor_id', 'sensor'],
    ['certificate_attempt', 'certificate_id', 'certificate'], ['amendment', 'certificate_id', 'certificate'],
    ['amendment_decision', 'amendment_id', 'amendment'], ['certificate_ending', 'certificate_id', 'certificate'],
    ['certificate_ending', 'successor_id', 'certificate']
  ] LOOP
    EXECUTE format('ALTER TABLE %1$I ADD FOREIGN KEY (%2$I, customer_id) REFERENCES %3$I (id, customer_id)',
                   place[1], place[2], place[3]);
  END LOOP;
  FOREACH place SLICE 1 IN ARRAY ARRAY[
    ['authorisation', 'person_id', 'person'], ['authorisation', 'granted_by_id', 'person'],
    ['authorisation', 'procedure_id', 'procedure'], ['authorisation_withdrawal', 'withdrawn_by_id', 'person'],
    ['signing_session', 'person_id', 'person'], ['signing_session', 'person_session_id', 'person_session'],
    ['signature', 'person_id', 'person'], ['signature', 'authorisation_id', 'authorisation'],
    ['opinion', 'run_id', 'run'], ['opinion', 'authorisation_id', 'authorisation'], ['opinion', 'author_id', 'person'],
    ['review_opening', 'run_id', 'run'], ['review_opening', 'evaluation_id', 'evaluation'],
    ['review_opening', 'sensor_id', 'sensor'], ['review_opening', 'setpoint_id', 'run_setpoint'],
    ['review_opening', 'opened_by_id', 'person'],
    ['review_sample', 'run_id', 'run'], ['review_sample', 'evaluation_id', 'evaluation'],
    ['review_comment', 'run_id', 'run'], ['review_comment', 'evaluation_id', 'evaluation'],
    ['review_comment', 'sensor_id', 'sensor'], ['review_comment', 'setpoint_id', 'run_setpoint'],
    ['review_comment', 'answers_id', 'review_comment'], ['review_comment', 'written_by_id', 'person'],
    ['amendment', 'asked_by_id', 'person'], ['amendment', 'nonconformity_id', 'nonconformity'],
    ['amendment_decision', 'decided_by_id', 'person'], ['certificate_ending', 'decided_by_id', 'person'],
    ['seal_key_ending', 'recorded_by_id', 'person']
  ] LOOP
    EXECUTE format('ALTER TABLE %1$I ADD FOREIGN KEY (%2$I) REFERENCES %3$I (id)', place[1], place[2], place[3]);
  END LOOP;
END $$;

-- ── A signature is of this certificate's content, by the person it names ───────────────────────────────────────────
CREATE FUNCTION guard_signature() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  PERFORM FROM public.certificate c
    WHERE c.id = NEW.certificate_id AND c.content_hash = NEW.content_hash AND c.signed_by_id = NEW.person_id;
  IF NOT FOUND THEN
    RAISE EXCEPTION 'this signature is not of the certificate''s content and signatory' USING ERRCODE = 'check_violation';
  END IF;
  PERFORM FROM public.authorisation a
    WHERE a.id = NEW.authorisation_id AND a.person_id = NEW.person_id AND a.activity = 'sign-off'
      AND NEW.signed_at::date BETWEEN a.valid_from AND coalesce(a.valid_until, 'infinity')
      AND NOT EXISTS (SELECT FROM public.authorisation_withdrawal w
                       WHERE w.authorisation_id = a.id AND w.withdrawn_at <= NEW.signed_at);
  IF NOT FOUND THEN
    RAISE EXCEPTION 'the signatory holds no authorisation in force' USING ERRCODE = 'check_violation';
  END IF;
  PERFORM FROM public.signing_session s WHERE s.id = NEW.signing_session_id AND s.person_id = NEW.person_id;
  IF NOT FOUND THEN
    RAISE EXCEPTION 'this session of signing is another person''s' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_signature() FROM PUBLIC;
-- After, so that whose row it is is judged first.
CREATE TRIGGER guard_signature AFTER INSERT ON signature FOR EACH ROW EXECUTE FUNCTION guard_signature();
ALTER TABLE signature ENABLE ALWAYS TRIGGER guard_signature;
-- One act may sign several certificates at once, and never again afterwards: its rows have one moment.
CREATE FUNCTION guard_signing_act() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  PERFORM pg_advisory_xact_lock(hashtextextended('signing-act ' || NEW.act_id, 0));
  IF EXISTS (SELECT FROM public.signature s
              WHERE s.act_id = NEW.act_id AND (s.signed_at <> NEW.signed_at OR s.person_id <> NEW.person_id)) THEN
    RAISE EXCEPTION 'this act of signing was carried out already' USING ERRCODE = 'unique_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_signing_act() FROM PUBLIC;
CREATE TRIGGER guard_signing_act BEFORE INSERT ON signature FOR EACH ROW EXECUTE FUNCTION guard_signing_act();
ALTER TABLE signature ENABLE ALWAYS TRIGGER guard_signing_act;

-- ── Nobody grants themselves an authorisation ──────────────────────────────────────────────────────────────────────
ALTER TABLE authorisation ADD CONSTRAINT authorisation_by_another CHECK (person_id <> granted_by_id);

-- ── A certificate that ended is followed by one that stands; what follows is of the same customer and sensor ───────
CREATE FUNCTION guard_certificate_ending() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF NEW.successor_id IS NOT NULL AND EXISTS (
    SELECT FROM public.certificate_ending e WHERE e.certificate_id = NEW.successor_id) THEN
    RAISE EXCEPTION 'the certificate that follows has ended itself' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_certificate_ending() FROM PUBLIC;
CREATE TRIGGER guard_certificate_ending AFTER INSERT ON certificate_ending
  FOR EACH ROW EXECUTE FUNCTION guard_certificate_ending();
ALTER TABLE certificate_ending ENABLE ALWAYS TRIGGER guard_certificate_ending;
