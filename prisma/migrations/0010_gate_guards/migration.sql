-- The gate before a run, as the last defence: no first reading without it, and no other load behind its back.
-- The functions run as the caller, who sees these tables in the laboratory's scope and nobody in any other.

CREATE FUNCTION demand_gate() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  last text;
BEGIN
  -- Runs that began before there was a gate go on.
  IF EXISTS (SELECT FROM public.scan_block WHERE run_id = NEW.run_id) THEN
    RETURN NEW;
  END IF;
  SELECT verdict INTO last FROM public.gate_outcome WHERE run_id = NEW.run_id ORDER BY id DESC LIMIT 1;
  IF last IS DISTINCT FROM 'may-start' THEN
    RAISE EXCEPTION 'run % has not passed its gate', NEW.run_id
      USING ERRCODE = 'restrict_violation', HINT = 'Pass the gate, then take the readings in.';
  END IF;
  RETURN NEW;
END $$;

CREATE FUNCTION keep_gated_load() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  touched uuid[] := CASE TG_OP WHEN 'INSERT' THEN ARRAY[NEW.run_id] WHEN 'DELETE' THEN ARRAY[OLD.run_id]
                    ELSE ARRAY[OLD.run_id, NEW.run_id] END;
BEGIN
  IF EXISTS (SELECT FROM public.gate_outcome WHERE run_id = ANY (touched) AND verdict = 'may-start') THEN
    RAISE EXCEPTION '% of a run that has passed its gate: % refused', TG_TABLE_NAME, TG_OP
      USING ERRCODE = 'restrict_violation', HINT = 'Plan another run.';
  END IF;
  RETURN NULL;
END $$;

CREATE FUNCTION keep_gated_run() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF (NEW.configuration_id, NEW.voltmeter_id, NEW.scanner_id)
     IS DISTINCT FROM (OLD.configuration_id, OLD.voltmeter_id, OLD.scanner_id)
     AND EXISTS (SELECT FROM public.gate_outcome WHERE run_id = NEW.id AND verdict = 'may-start') THEN
    RAISE EXCEPTION 'run % has passed its gate: its furnace and instruments stay', NEW.number
      USING ERRCODE = 'restrict_violation', HINT = 'Plan another run.';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION demand_gate(), keep_gated_load(), keep_gated_run() FROM PUBLIC;

CREATE TRIGGER demand_gate BEFORE INSERT ON scan_block FOR EACH ROW EXECUTE FUNCTION demand_gate();
ALTER TABLE scan_block ENABLE ALWAYS TRIGGER demand_gate;
CREATE TRIGGER keep_gated_run BEFORE UPDATE ON run FOR EACH ROW EXECUTE FUNCTION keep_gated_run();
ALTER TABLE run ENABLE ALWAYS TRIGGER keep_gated_run;
-- After, so that what the row itself may not say is told first.
CREATE TRIGGER keep_gated_load AFTER INSERT OR UPDATE OR DELETE ON load_place
  FOR EACH ROW EXECUTE FUNCTION keep_gated_load();
ALTER TABLE load_place ENABLE ALWAYS TRIGGER keep_gated_load;
CREATE TRIGGER keep_gated_load AFTER INSERT OR UPDATE OR DELETE ON run_setpoint
  FOR EACH ROW EXECUTE FUNCTION keep_gated_load();
ALTER TABLE run_setpoint ENABLE ALWAYS TRIGGER keep_gated_load;
