-- The scope has one capability for a type and temperature on any day, and a procedure's revision two persons. The functions
-- run as the caller, who sees these tables in the laboratory's scope and nobody in any other.

CREATE FUNCTION refuse_scope_overlap() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  -- Two lines recorded at once take turns; the second sees the first.
  PERFORM pg_advisory_xact_lock(hashtextextended('scope', 0));
  IF EXISTS (
    SELECT FROM public.scope_line line
    WHERE line.type_letter = NEW.type_letter
      AND line.from_celsius < NEW.to_celsius AND NEW.from_celsius < line.to_celsius
      AND (line.valid_until IS NULL OR NEW.valid_from <= line.valid_until)
      AND (NEW.valid_until IS NULL OR line.valid_from <= NEW.valid_until)
  ) THEN
    RAISE EXCEPTION 'type % has a line of the scope from % to % °C at that time', NEW.type_letter, NEW.from_celsius, NEW.to_celsius
      USING ERRCODE = 'exclusion_violation', HINT = 'End the other line first.';
  END IF;
  RETURN NEW;
END $$;

CREATE FUNCTION guard_procedure_approval() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF NEW.state = 'current' AND (TG_OP = 'INSERT' OR OLD.state = 'draft')
     AND NEW.recorded_by_id IS NOT NULL
     AND (NEW.current_by_id IS NULL OR NEW.current_by_id = NEW.recorded_by_id) THEN
    RAISE EXCEPTION 'who drafted a procedure revision cannot make it current' USING ERRCODE = 'check_violation';
  END IF;
  IF TG_OP = 'UPDATE' AND NEW.state <> 'draft'
     AND (NEW.id, NEW.procedure_id, NEW.revision, NEW.budget_inputs, NEW.gate_policy, NEW.change, NEW.verification, NEW.recorded_by_id, NEW.recorded_at)
     IS DISTINCT FROM
     (OLD.id, OLD.procedure_id, OLD.revision, OLD.budget_inputs, OLD.gate_policy, OLD.change, OLD.verification, OLD.recorded_by_id, OLD.recorded_at) THEN
    RAISE EXCEPTION 'what is made current is what was drafted' USING ERRCODE = 'insufficient_privilege';
  END IF;
  IF TG_OP = 'UPDATE' AND OLD.state <> 'draft' AND NEW.current_by_id IS DISTINCT FROM OLD.current_by_id THEN
    RAISE EXCEPTION 'who made a procedure revision current stays' USING ERRCODE = 'insufficient_privilege';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION refuse_scope_overlap(), guard_procedure_approval() FROM PUBLIC;

CREATE TRIGGER refuse_overlap BEFORE INSERT ON scope_line FOR EACH ROW EXECUTE FUNCTION refuse_scope_overlap();
CREATE TRIGGER guard_approval BEFORE INSERT OR UPDATE ON procedure_revision FOR EACH ROW EXECUTE FUNCTION guard_procedure_approval();
ALTER TABLE scope_line ENABLE ALWAYS TRIGGER refuse_overlap;
ALTER TABLE procedure_revision ENABLE ALWAYS TRIGGER guard_approval;
