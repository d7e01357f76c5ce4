-- A sealed document names a key that is on the list, is the laboratory's for sealing, is in force and has not ended. The
-- last defence: the process that seals asks first.
CREATE FUNCTION guard_seal() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  PERFORM FROM public.seal_key k
    WHERE k.fingerprint = NEW.seal_fingerprint AND k.purpose = 'seal'
      AND NEW.rendered_at BETWEEN k.not_before AND k.not_after
      AND NOT EXISTS (SELECT FROM public.seal_key_ending e
                       WHERE e.seal_key_id = k.id AND e.effective_at <= NEW.rendered_at);
  IF NOT FOUND THEN
    RAISE EXCEPTION 'this document is sealed by no key that the laboratory seals with'
      USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;

CREATE TRIGGER guard_seal BEFORE INSERT ON certificate_file
  FOR EACH ROW WHEN (NEW.seal_fingerprint IS NOT NULL) EXECUTE FUNCTION guard_seal();
