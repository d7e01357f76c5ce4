-- The room of a run, as the last defence: recorded while the run is the technician's, at its start or its end.
CREATE FUNCTION guard_room() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  of_run record;
BEGIN
  IF NEW.kind <> 'ambient' THEN
    RETURN NEW;
  END IF;
  IF NEW.channel NOT IN ('start', 'end') THEN
    RAISE EXCEPTION 'bench_check: the room is told at the start or at the end of a run' USING ERRCODE = 'check_violation';
  END IF;
  -- Held until the end, so that the run is not handed over meanwhile.
  SELECT state, started_at INTO of_run FROM public.run WHERE id = NEW.run_id FOR SHARE;
  IF of_run.state NOT IN ('planned', 'measuring', 'returned') OR (NEW.channel = 'end' AND of_run.started_at IS NULL) THEN
    RAISE EXCEPTION 'bench_check: the room of a run that is % cannot be recorded at its %', of_run.state, NEW.channel
      USING ERRCODE = 'restrict_violation', HINT = 'It is recorded before the run is handed over.';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_room() FROM PUBLIC;
CREATE TRIGGER guard_room BEFORE INSERT ON bench_check FOR EACH ROW EXECUTE FUNCTION guard_room();
ALTER TABLE bench_check ENABLE ALWAYS TRIGGER guard_room;

-- What a run begins to stand on must be usable; what it stood on already was judged then, whatever became of it.
CREATE OR REPLACE FUNCTION refuse_unusable() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  moment timestamptz;
  chosen uuid[];
  refused record;
BEGIN
  IF TG_TABLE_NAME = 'run' THEN
    moment := NEW.created_at;
    chosen := ARRAY[NEW.voltmeter_id, NEW.scanner_id, NEW.ambient_id];
    IF TG_OP = 'UPDATE' THEN
      chosen := ARRAY[nullif(NEW.voltmeter_id, OLD.voltmeter_id), nullif(NEW.scanner_id, OLD.scanner_id),
                      nullif(NEW.ambient_id, OLD.ambient_id)];
    END IF;
  ELSE
    SELECT created_at INTO moment FROM public.run WHERE id = NEW.run_id;
    chosen := ARRAY[NEW.equipment_id, NEW.junction_id, NEW.lead_id];
  END IF;
  SELECT one.id, public.use_ground(one.id, moment) AS ground INTO refused
    FROM unnest(chosen) AS one (id)
   WHERE one.id IS NOT NULL AND public.use_ground(one.id, moment) IS NOT NULL LIMIT 1;
  IF refused.ground IS NOT NULL THEN
    RAISE EXCEPTION '%: equipment % cannot be used: %', TG_TABLE_NAME, refused.id, refused.ground
      USING ERRCODE = 'check_violation', HINT = refused.ground;
  END IF;
  RETURN NULL;
END $$;
