-- What becomes of an issued certificate (ISO/IEC 17025 7.8.8): asked for once at a time, decided by another person, and
-- an ending that follows from it.

-- ── Of one certificate one thing is asked for at a time, and none of one that has ended ────────────────────────────
CREATE FUNCTION guard_amendment() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  PERFORM pg_advisory_xact_lock(hashtextextended('certificate ' || NEW.certificate_id, 0));
  IF EXISTS (SELECT FROM public.certificate_ending e WHERE e.certificate_id = NEW.certificate_id) THEN
    RAISE EXCEPTION 'this certificate has ended already' USING ERRCODE = 'check_violation';
  END IF;
  IF EXISTS (SELECT FROM public.amendment a
              WHERE a.certificate_id = NEW.certificate_id AND a.id <> NEW.id
                AND NOT EXISTS (SELECT FROM public.amendment_decision d WHERE d.amendment_id = a.id)) THEN
    RAISE EXCEPTION 'something is asked for this certificate already' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_amendment() FROM PUBLIC;
-- After, so that whose row it is is judged first.
CREATE TRIGGER guard_amendment AFTER INSERT ON amendment FOR EACH ROW EXECUTE FUNCTION guard_amendment();
ALTER TABLE amendment ENABLE ALWAYS TRIGGER guard_amendment;

-- ── Who asked does not sign ────────────────────────────────────────────────────────────────────────────────────────
CREATE FUNCTION guard_amendment_decision() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF NEW.outcome = 'signed-off' AND EXISTS (
    SELECT FROM public.amendment a WHERE a.id = NEW.amendment_id AND a.asked_by_id = NEW.decided_by_id) THEN
    RAISE EXCEPTION 'who asked for an amendment does not sign it' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_amendment_decision() FROM PUBLIC;
CREATE TRIGGER guard_amendment_decision AFTER INSERT ON amendment_decision
  FOR EACH ROW EXECUTE FUNCTION guard_amendment_decision();
ALTER TABLE amendment_decision ENABLE ALWAYS TRIGGER guard_amendment_decision;

-- ── What follows names what it follows, by number, hash and kind, and was asked for and signed by who ends it ──────
CREATE FUNCTION guard_certificate_successor() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  asked text := CASE NEW.kind WHEN 'amended' THEN 'amendment' ELSE 'replacement' END;
BEGIN
  PERFORM pg_advisory_xact_lock(hashtextextended('certificate ' || NEW.certificate_id, 0));
  IF NEW.successor_id IS NULL THEN
    RETURN NEW;
  END IF;
  PERFORM FROM public.certificate earlier, public.certificate later
    WHERE earlier.id = NEW.certificate_id AND later.id = NEW.successor_id
      AND later.order_id = earlier.order_id AND later.signed_by_id = NEW.decided_by_id
      AND later.content::json -> 'amends' ->> 'number' = earlier.number
      AND later.content::json -> 'amends' ->> 'contentHash' = encode(earlier.content_hash, 'hex')
      AND later.content::json -> 'amends' ->> 'kind' = asked;
  IF NOT FOUND THEN
    RAISE EXCEPTION 'the certificate that follows does not name the one it follows' USING ERRCODE = 'check_violation';
  END IF;
  PERFORM FROM public.amendment a JOIN public.amendment_decision d ON d.amendment_id = a.id
    WHERE a.certificate_id = NEW.certificate_id AND a.kind = asked
      AND d.outcome = 'signed-off' AND d.decided_by_id = NEW.decided_by_id;
  IF NOT FOUND THEN
    RAISE EXCEPTION 'nobody asked for the certificate that follows, or nobody signed what was asked for'
      USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_certificate_successor() FROM PUBLIC;
CREATE TRIGGER guard_certificate_successor AFTER INSERT ON certificate_ending
  FOR EACH ROW EXECUTE FUNCTION guard_certificate_successor();
ALTER TABLE certificate_ending ENABLE ALWAYS TRIGGER guard_certificate_successor;
