-- What an external provider measured (ISO/IEC 17025:2017, 7.8.2.1 p): kept as evidence, counted once a second person
-- accepted it, and never mixed with what was measured here. The functions run as the caller, who sees these tables in the
-- laboratory's scope.

DO $$
DECLARE
  evidence text;
BEGIN
  FOREACH evidence IN ARRAY ARRAY['provider_report', 'provider_report_decision'] LOOP
    EXECUTE format('GRANT SELECT, INSERT ON %I TO emfolio_runtime', evidence);
    EXECUTE format('CREATE TRIGGER refuse_change BEFORE UPDATE OR DELETE ON %I FOR EACH ROW EXECUTE FUNCTION refuse_change()', evidence);
    EXECUTE format('CREATE TRIGGER refuse_truncate BEFORE TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', evidence);
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER refuse_change', evidence);
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER refuse_truncate', evidence);
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', evidence);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', evidence);
    EXECUTE format('CREATE POLICY laboratory ON %I TO emfolio_runtime
                    USING ((SELECT app_is_laboratory())) WITH CHECK ((SELECT app_is_laboratory()))', evidence);
  END LOOP;
END $$;
GRANT USAGE ON SEQUENCE provider_report_decision_id_seq TO emfolio_runtime;

-- To a customer what counts, and nothing before it does.
CREATE POLICY customer ON provider_report_decision FOR SELECT TO emfolio_runtime
  USING (decision = 'accepted' AND customer_id = (SELECT app_customer_id()));
CREATE POLICY customer ON provider_report FOR SELECT TO emfolio_runtime
  USING (customer_id = (SELECT app_customer_id()) AND EXISTS (
    SELECT FROM provider_report_decision d WHERE d.report_id = provider_report.id AND d.decision = 'accepted'));

ALTER TABLE provider_report
  ADD CHECK (provider_name <> ''), ADD CHECK (certificate <> ''), ADD CHECK (file_name <> ''), ADD CHECK (sequence > 0),
  ADD CHECK ((sequence = 1) = (correction = '')),
  ADD CHECK (media_type = 'application/pdf'), ADD CHECK (octet_length(bytes) BETWEEN 1 AND 10485760),
  ADD CONSTRAINT provider_report_is_its_hash CHECK (sha256 = sha256(bytes)),
  ADD CONSTRAINT provider_report_results_json CHECK (results::json IS NOT NULL),
  ADD UNIQUE (id, customer_id),
  ADD FOREIGN KEY (sensor_id, customer_id) REFERENCES sensor (id, customer_id),
  ADD FOREIGN KEY (provider_id) REFERENCES provider (id),
  ADD FOREIGN KEY (recorded_by_id) REFERENCES person (id);
ALTER TABLE provider_report_decision
  ADD CONSTRAINT provider_report_decision_decision_word CHECK (decision ~ '^(accepted|rejected)$'),
  ADD CHECK (decision = 'accepted' OR reason <> ''),
  ADD FOREIGN KEY (report_id, customer_id) REFERENCES provider_report (id, customer_id),
  ADD FOREIGN KEY (decided_by_id) REFERENCES person (id);

-- ── A report is of the provider that the sensor's line names ───────────────────────────────────────────────────────
CREATE FUNCTION guard_provider_report() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF NOT EXISTS (SELECT FROM public.sensor s JOIN public.order_line l ON l.id = s.order_line_id
                  WHERE s.id = NEW.sensor_id AND l.provider_id = NEW.provider_id) THEN
    RAISE EXCEPTION 'provider_report: the sensor''s line does not go to this provider' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
-- After, here and below, so that whose row it is is judged first.
CREATE TRIGGER guard_provider_report AFTER INSERT ON provider_report
  FOR EACH ROW EXECUTE FUNCTION guard_provider_report();

-- ── Whoever recorded it does not accept it ─────────────────────────────────────────────────────────────────────────
CREATE FUNCTION guard_provider_report_decision() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF EXISTS (SELECT FROM public.provider_report WHERE id = NEW.report_id AND recorded_by_id = NEW.decided_by_id) THEN
    RAISE EXCEPTION 'provider_report_decision: another person decides than recorded it' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER guard_provider_report_decision AFTER INSERT ON provider_report_decision
  FOR EACH ROW EXECUTE FUNCTION guard_provider_report_decision();

-- ── What goes to a provider is not loaded here ─────────────────────────────────────────────────────────────────────
CREATE FUNCTION demand_done_here() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF EXISTS (SELECT FROM public.sensor s JOIN public.order_line l ON l.id = s.order_line_id
              WHERE s.id = NEW.sensor_id AND l.provider_id IS NOT NULL) THEN
    RAISE EXCEPTION 'load_place: the line of this sensor is subcontracted' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER demand_done_here AFTER INSERT OR UPDATE OF sensor_id ON load_place
  FOR EACH ROW EXECUTE FUNCTION demand_done_here();

-- ── Finished without a run of ours: only by a provider's accepted report ───────────────────────────────────────────
CREATE FUNCTION demand_provider_report() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF NOT EXISTS (SELECT FROM public.provider_report r JOIN public.provider_report_decision d ON d.report_id = r.id
                  WHERE r.sensor_id = NEW.id AND d.decision = 'accepted') THEN
    RAISE EXCEPTION 'sensor %: finished without a run and without a provider''s accepted report', NEW.tag
      USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER demand_provider_report BEFORE UPDATE OF state ON sensor
  FOR EACH ROW WHEN (OLD.state = 'received' AND NEW.state = 'issued') EXECUTE FUNCTION demand_provider_report();

DO $$
DECLARE
  guard text[];
BEGIN
  FOREACH guard SLICE 1 IN ARRAY ARRAY[
    ['provider_report', 'guard_provider_report'], ['provider_report_decision', 'guard_provider_report_decision'],
    ['load_place', 'demand_done_here'], ['sensor', 'demand_provider_report']
  ] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER %I', guard[1], guard[2]);
    EXECUTE format('REVOKE ALL ON FUNCTION %I() FROM PUBLIC', guard[2]);
  END LOOP;
END $$;
