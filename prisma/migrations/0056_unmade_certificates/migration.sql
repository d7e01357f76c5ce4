-- A signed certificate whose document cannot be made may be amended, replaced or withdrawn: it keeps its number and has
-- ended. From then on none is made of it, and it is not among those that wait for one.

CREATE FUNCTION guard_certificate_file() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  PERFORM pg_advisory_xact_lock(hashtextextended('certificate ' || NEW.certificate_id, 0));
  IF EXISTS (SELECT FROM public.certificate_ending e WHERE e.certificate_id = NEW.certificate_id) THEN
    RAISE EXCEPTION 'this certificate has ended, and no document is made of it any more'
      USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_certificate_file() FROM PUBLIC;
CREATE TRIGGER guard_certificate_file AFTER INSERT ON certificate_file
  FOR EACH ROW EXECUTE FUNCTION guard_certificate_file();
ALTER TABLE certificate_file ENABLE ALWAYS TRIGGER guard_certificate_file;

CREATE TRIGGER mark_ended AFTER INSERT ON certificate_ending FOR EACH ROW EXECUTE FUNCTION mark_made();
ALTER TABLE certificate_ending ENABLE ALWAYS TRIGGER mark_ended;

DELETE FROM certificate_pending p WHERE EXISTS (SELECT FROM certificate_ending e WHERE e.certificate_id = p.certificate_id);
