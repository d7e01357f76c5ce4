-- Review: openings, remarks and the lot speak of one run's own evaluation; a remark that is open stops its sensor.

-- ── What was opened is a result of that evaluation ─────────────────────────────────────────────────────────────────
CREATE FUNCTION guard_review_opening() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  PERFORM FROM public.result r
    WHERE r.evaluation_id = NEW.evaluation_id AND r.run_id = NEW.run_id
      AND r.sensor_id = NEW.sensor_id AND r.setpoint_id = NEW.setpoint_id;
  IF NOT FOUND THEN
    RAISE EXCEPTION 'this evaluation has no such result' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_review_opening() FROM PUBLIC;
CREATE TRIGGER guard_review_opening AFTER INSERT ON review_opening FOR EACH ROW EXECUTE FUNCTION guard_review_opening();
ALTER TABLE review_opening ENABLE ALWAYS TRIGGER guard_review_opening;

CREATE FUNCTION guard_review_sample() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  PERFORM FROM public.evaluation e WHERE e.id = NEW.evaluation_id AND e.run_id = NEW.run_id;
  IF NOT FOUND THEN
    RAISE EXCEPTION 'this evaluation is another run''s' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_review_sample() FROM PUBLIC;
CREATE TRIGGER guard_review_sample AFTER INSERT ON review_sample FOR EACH ROW EXECUTE FUNCTION guard_review_sample();
ALTER TABLE review_sample ENABLE ALWAYS TRIGGER guard_review_sample;

-- ── A remark stays at a number that is there; an answer goes to an open remark of the same place ───────────────────
CREATE FUNCTION guard_review_comment() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  remark public.review_comment;
BEGIN
  PERFORM FROM public.evaluation e WHERE e.id = NEW.evaluation_id AND e.run_id = NEW.run_id;
  IF NOT FOUND THEN
    RAISE EXCEPTION 'this evaluation is another run''s' USING ERRCODE = 'check_violation';
  END IF;
  IF NEW.sensor_id IS NOT NULL THEN
    PERFORM FROM public.result r
      WHERE r.evaluation_id = NEW.evaluation_id AND r.sensor_id = NEW.sensor_id
        AND (NEW.setpoint_id IS NULL OR r.setpoint_id = NEW.setpoint_id);
    IF NOT FOUND THEN
      RAISE EXCEPTION 'this evaluation has no such result' USING ERRCODE = 'check_violation';
    END IF;
  END IF;
  IF NEW.answers_id IS NULL THEN
    RETURN NEW;
  END IF;
  -- Locked, so that of two who settle it at once one is told.
  PERFORM pg_advisory_xact_lock(hashtextextended('review-comment ' || NEW.answers_id, 0));
  SELECT * INTO remark FROM public.review_comment c WHERE c.id = NEW.answers_id;
  IF remark.answers_id IS NOT NULL OR remark.run_id <> NEW.run_id
     OR remark.sensor_id IS DISTINCT FROM NEW.sensor_id OR remark.setpoint_id IS DISTINCT FROM NEW.setpoint_id
     OR remark.place <> NEW.place THEN
    RAISE EXCEPTION 'an answer goes to a remark, and stays at its number' USING ERRCODE = 'check_violation';
  END IF;
  IF EXISTS (SELECT FROM public.review_comment c
              WHERE c.run_id = NEW.run_id AND c.answers_id = NEW.answers_id AND c.settles AND c.id <> NEW.id) THEN
    RAISE EXCEPTION 'this remark is settled' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_review_comment() FROM PUBLIC;
CREATE TRIGGER guard_review_comment AFTER INSERT ON review_comment FOR EACH ROW EXECUTE FUNCTION guard_review_comment();
ALTER TABLE review_comment ENABLE ALWAYS TRIGGER guard_review_comment;

-- ── Nothing is certified past an open remark on it or on its run ───────────────────────────────────────────────────
CREATE FUNCTION refuse_unsettled() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF EXISTS (
    SELECT FROM public.review_comment remark
     WHERE remark.run_id = NEW.run_id AND remark.answers_id IS NULL
       AND (remark.sensor_id IS NULL OR remark.sensor_id = NEW.sensor_id)
       AND NOT EXISTS (SELECT FROM public.review_comment answer
                        WHERE answer.run_id = NEW.run_id AND answer.answers_id = remark.id AND answer.settles)) THEN
    RAISE EXCEPTION 'a remark on this sensor is not settled' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION refuse_unsettled() FROM PUBLIC;
CREATE TRIGGER refuse_unsettled BEFORE INSERT ON certificate FOR EACH ROW EXECUTE FUNCTION refuse_unsettled();
ALTER TABLE certificate ENABLE ALWAYS TRIGGER refuse_unsettled;
-- One of several sensors has its row there; what stands for one alone has none.
CREATE TRIGGER refuse_unsettled BEFORE INSERT ON certificate_part FOR EACH ROW EXECUTE FUNCTION refuse_unsettled();
ALTER TABLE certificate_part ENABLE ALWAYS TRIGGER refuse_unsettled;
