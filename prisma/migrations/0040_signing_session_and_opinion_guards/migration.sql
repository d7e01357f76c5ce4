-- Opinions and sessions of signing: by whom, and from which sign-in.

-- ── An opinion is its author's, who is authorised for opinions when it is written ──────────────────────────────────
CREATE FUNCTION guard_opinion() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  PERFORM FROM public.authorisation a
    WHERE a.id = NEW.authorisation_id AND a.person_id = NEW.author_id AND a.activity = 'opinion'
      AND NEW.written_at::date BETWEEN a.valid_from AND coalesce(a.valid_until, 'infinity')
      AND NOT EXISTS (SELECT FROM public.authorisation_withdrawal w
                       WHERE w.authorisation_id = a.id AND w.withdrawn_at <= NEW.written_at);
  IF NOT FOUND THEN
    RAISE EXCEPTION 'the author holds no authorisation for opinions in force' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_opinion() FROM PUBLIC;
-- After, so that whose row it is is judged first.
CREATE TRIGGER guard_opinion AFTER INSERT ON opinion FOR EACH ROW EXECUTE FUNCTION guard_opinion();
ALTER TABLE opinion ENABLE ALWAYS TRIGGER guard_opinion;

-- ── A session of signing belongs to a full sign-in of the same person, and does not move to another ─────────────────
CREATE FUNCTION guard_signing_session() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  PERFORM FROM public.person_session s
    WHERE s.id = NEW.person_session_id AND s.person_id = NEW.person_id AND s.kind = 'full';
  IF NOT FOUND THEN
    RAISE EXCEPTION 'a session of signing needs a full sign-in of the same person' USING ERRCODE = 'check_violation';
  END IF;
  IF TG_OP = 'UPDATE' AND (OLD.id, OLD.person_id, OLD.person_session_id, OLD.opened_at)
      IS DISTINCT FROM (NEW.id, NEW.person_id, NEW.person_session_id, NEW.opened_at) THEN
    RAISE EXCEPTION 'a session of signing stays whose and when it was opened' USING ERRCODE = 'check_violation';
  END IF;
  IF TG_OP = 'UPDATE' AND OLD.ended_at IS NOT NULL THEN
    RAISE EXCEPTION 'this session of signing has ended' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_signing_session() FROM PUBLIC;
CREATE TRIGGER guard_signing_session AFTER INSERT OR UPDATE ON signing_session
  FOR EACH ROW EXECUTE FUNCTION guard_signing_session();
ALTER TABLE signing_session ENABLE ALWAYS TRIGGER guard_signing_session;
