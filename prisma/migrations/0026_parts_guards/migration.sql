-- Work in parts, as the last defence: what may be put back, abandoned, repeated, annealed, and stand on a certificate.
-- The functions run as the caller, who sees these tables in the laboratory's scope and nobody in any other.

-- ── One sensor leaves a review, the others go on ───────────────────────────────────────────────────────────────────
ALTER TABLE review_decision DROP CONSTRAINT review_decision_decision_word;
ALTER TABLE review_decision ADD CONSTRAINT review_decision_decision_word
  CHECK (decision ~ '^(submitted|returned|signed-off|second-look|put-back|kept)$');
ALTER TABLE review_decision ADD CHECK (decision NOT IN ('put-back', 'kept') OR (sensor_id IS NOT NULL AND reason <> ''));

/* What is put back or kept out of a run is not signed off from it afterwards, and the other way round. */
CREATE FUNCTION guard_review_decision() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF NEW.decision IN ('put-back', 'kept', 'signed-off') AND EXISTS (
    SELECT FROM public.review_decision
     WHERE run_id = NEW.run_id AND sensor_id = NEW.sensor_id AND id < NEW.id
       AND decision IN ('put-back', 'signed-off', 'kept')
       -- Kept results are signed off with the certificate they were kept for.
       AND NOT (decision = 'kept' AND NEW.decision = 'signed-off')
       -- What was put back counts after all, where the rule that was fixed beforehand says so.
       AND NOT (decision = 'put-back' AND NEW.decision = 'signed-off' AND EXISTS (
         SELECT FROM public.repeat_measurement
          WHERE earlier_run_id = NEW.run_id AND sensor_id = NEW.sensor_id
            AND counting_rule = 'earlier-counts-if-they-agree'))) THEN
    RAISE EXCEPTION 'this sensor has left the review of run %', NEW.run_id USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
-- After, here and below, so that whose row it is is judged first.
CREATE TRIGGER guard_review_decision AFTER INSERT ON review_decision
  FOR EACH ROW EXECUTE FUNCTION guard_review_decision();

-- ── An abandoned run ───────────────────────────────────────────────────────────────────────────────────────────────
ALTER TABLE run DROP CONSTRAINT run_state_word;
ALTER TABLE run ADD CONSTRAINT run_state_word
  CHECK (state ~ '^(planned|measuring|submitted|returned|signed-off|abandoned)$');

CREATE FUNCTION keep_abandoned_run() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF OLD.state = 'abandoned' AND NEW.state <> 'abandoned' THEN
    RAISE EXCEPTION 'run % is abandoned and stays so', OLD.number USING ERRCODE = 'restrict_violation';
  END IF;
  IF NEW.state = 'abandoned' AND OLD.state NOT IN ('planned', 'measuring', 'abandoned') THEN
    RAISE EXCEPTION 'run % was handed over for review: it is returned or put back, not abandoned', OLD.number
      USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER keep_abandoned_run BEFORE UPDATE OF state ON run FOR EACH ROW EXECUTE FUNCTION keep_abandoned_run();

-- ── Measured once more ─────────────────────────────────────────────────────────────────────────────────────────────
/* Where a sensor of the run has figures of the same set at one of its setpoints already, from another run, without a
   repeat authorised: its id. Setpoints are the same but for the rounding of °F. */
CREATE FUNCTION unauthorised_repeat(subject uuid) RETURNS uuid
LANGUAGE sql STABLE SET search_path = pg_catalog, pg_temp
RETURN (
  SELECT p.sensor_id FROM public.load_place p
    JOIN public.run_setpoint s ON s.run_id = p.run_id
    JOIN public.result r ON r.sensor_id = p.sensor_id AND r.run_id <> p.run_id AND r.state <> 'not-reached'
    JOIN public.run_setpoint e ON e.id = r.setpoint_id AND abs(e.celsius - s.celsius) <= 0.006
    JOIN public.load_place o ON o.run_id = r.run_id AND o.sensor_id = p.sensor_id AND o.set_kind = p.set_kind
   WHERE p.run_id = subject
     AND NOT EXISTS (SELECT FROM public.repeat_measurement m WHERE m.run_id = subject AND m.sensor_id = p.sensor_id)
   LIMIT 1
);

CREATE FUNCTION demand_repeat() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF EXISTS (SELECT FROM public.scan_block WHERE run_id = NEW.run_id) THEN
    RETURN NEW;
  END IF;
  IF EXISTS (SELECT FROM public.run WHERE id = NEW.run_id AND state = 'abandoned') THEN
    RAISE EXCEPTION 'run % is abandoned', NEW.run_id USING ERRCODE = 'restrict_violation';
  END IF;
  IF public.unauthorised_repeat(NEW.run_id) IS NOT NULL THEN
    RAISE EXCEPTION 'run % measures a sensor once more and nobody authorised it', NEW.run_id
      USING ERRCODE = 'restrict_violation', HINT = 'Authorise the repeat, then take the readings in.';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER demand_repeat BEFORE INSERT ON scan_block FOR EACH ROW EXECUTE FUNCTION demand_repeat();

CREATE FUNCTION guard_repeat() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  -- Whoever takes the first reading in waits, or is waited for and then seen.
  PERFORM FROM public.run WHERE id = NEW.run_id FOR UPDATE;
  IF EXISTS (SELECT FROM public.scan_block WHERE run_id = NEW.run_id) THEN
    RAISE EXCEPTION 'run % has readings: what counts was to be said before', NEW.run_id
      USING ERRCODE = 'restrict_violation';
  END IF;
  IF NOT EXISTS (
    SELECT FROM public.load_place n JOIN public.load_place e
        ON e.sensor_id = n.sensor_id AND e.set_kind = n.set_kind AND e.run_id = NEW.earlier_run_id
     WHERE n.run_id = NEW.run_id AND n.sensor_id = NEW.sensor_id)
     OR NOT EXISTS (SELECT FROM public.result WHERE run_id = NEW.earlier_run_id AND sensor_id = NEW.sensor_id) THEN
    RAISE EXCEPTION 'repeat_measurement: both runs have to be of this sensor and set, the earlier with results'
      USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER guard_repeat AFTER INSERT ON repeat_measurement FOR EACH ROW EXECUTE FUNCTION guard_repeat();

-- ── After annealing ────────────────────────────────────────────────────────────────────────────────────────────────
CREATE FUNCTION demand_anneal() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF NEW.set_kind = 'after-anneal'
     AND NOT EXISTS (SELECT FROM public.sensor_anneal WHERE sensor_id = NEW.sensor_id) THEN
    RAISE EXCEPTION 'load_place: no annealing is recorded for this sensor' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER demand_anneal BEFORE INSERT OR UPDATE OF set_kind, sensor_id ON load_place
  FOR EACH ROW EXECUTE FUNCTION demand_anneal();
ALTER TABLE load_place ADD CHECK (set_kind = 'as-received' OR kind = 'sensor');

-- ── What a certificate speaks of was measured ──────────────────────────────────────────────────────────────────────
ALTER TABLE certificate_part ADD FOREIGN KEY (evaluation_id, run_id) REFERENCES evaluation (id, run_id);
CREATE FUNCTION guard_certificate_part() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF NOT EXISTS (SELECT FROM public.result WHERE evaluation_id = NEW.evaluation_id AND sensor_id = NEW.sensor_id)
     OR NOT EXISTS (SELECT FROM public.load_place
                     WHERE run_id = NEW.run_id AND sensor_id = NEW.sensor_id AND set_kind = NEW.set_kind) THEN
    RAISE EXCEPTION 'certificate_part: that evaluation has no result of this sensor and set' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER guard_certificate_part AFTER INSERT ON certificate_part
  FOR EACH ROW EXECUTE FUNCTION guard_certificate_part();

DO $$
DECLARE
  guard text[];
BEGIN
  FOREACH guard SLICE 1 IN ARRAY ARRAY[
    ['review_decision', 'guard_review_decision'], ['run', 'keep_abandoned_run'], ['scan_block', 'demand_repeat'],
    ['repeat_measurement', 'guard_repeat'], ['load_place', 'demand_anneal'], ['certificate_part', 'guard_certificate_part']
  ] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER %I', guard[1], guard[2]);
    EXECUTE format('REVOKE ALL ON FUNCTION %I() FROM PUBLIC', guard[2]);
  END LOOP;
END $$;
REVOKE ALL ON FUNCTION unauthorised_repeat(uuid) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION unauthorised_repeat(uuid) TO emfolio_runtime;
