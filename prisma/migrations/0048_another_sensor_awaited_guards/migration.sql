-- Another sensor is awaited in the place of one that goes back unmeasured. Only of one sensor, and of one without a
-- certificate: what is certified keeps its place in the order.
ALTER TABLE hold_release ADD CHECK (NOT awaits_another OR outcome = 'return-unmeasured');

CREATE FUNCTION guard_awaits_another() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF NEW.awaits_another AND NOT EXISTS (
    SELECT FROM public.hold h JOIN public.sensor s ON s.id = h.sensor_id
     WHERE h.id = NEW.hold_id
       AND NOT EXISTS (SELECT FROM public.certificate c WHERE c.sensor_id = s.id)
       AND NOT EXISTS (SELECT FROM public.certificate_part p WHERE p.sensor_id = s.id)) THEN
    RAISE EXCEPTION 'hold_release: another is awaited only for one sensor, and one without a certificate'
      USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER guard_awaits_another BEFORE INSERT ON hold_release FOR EACH ROW EXECUTE FUNCTION guard_awaits_another();
ALTER TABLE hold_release ENABLE ALWAYS TRIGGER guard_awaits_another;
REVOKE ALL ON FUNCTION guard_awaits_another() FROM PUBLIC;
