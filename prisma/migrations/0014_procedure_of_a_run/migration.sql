-- A run follows a revision of a procedure that is current when it is made, and keeps it with its figures. Runs of before there
-- were revisions have none. The function runs as the caller, who sees revisions in the laboratory's scope and nobody in any other.

CREATE FUNCTION demand_current_procedure() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  inputs text;
BEGIN
  -- Locked: whoever withdraws it meanwhile waits until this run is made, or it is refused.
  SELECT budget_inputs INTO inputs FROM public.procedure_revision
  WHERE id = NEW.procedure_revision_id AND state = 'current' FOR SHARE;
  IF inputs IS NULL THEN
    RAISE EXCEPTION 'run % follows no current revision of a procedure', NEW.number
      USING ERRCODE = 'restrict_violation', HINT = 'Choose a procedure that has a current revision.';
  END IF;
  IF inputs <> NEW.budget_inputs THEN
    RAISE EXCEPTION 'run % has other figures than its procedure', NEW.number
      USING ERRCODE = 'restrict_violation', HINT = 'Other figures are another revision.';
  END IF;
  RETURN NEW;
END $$;

CREATE FUNCTION keep_procedure() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF (NEW.procedure_revision_id, NEW.budget_inputs) IS DISTINCT FROM (OLD.procedure_revision_id, OLD.budget_inputs) THEN
    RAISE EXCEPTION 'run % keeps the procedure it was made by', OLD.number USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION demand_current_procedure(), keep_procedure() FROM PUBLIC;

CREATE TRIGGER demand_current_procedure BEFORE INSERT ON run FOR EACH ROW EXECUTE FUNCTION demand_current_procedure();
CREATE TRIGGER keep_procedure BEFORE UPDATE ON run FOR EACH ROW EXECUTE FUNCTION keep_procedure();
ALTER TABLE run ENABLE ALWAYS TRIGGER demand_current_procedure;
ALTER TABLE run ENABLE ALWAYS TRIGGER keep_procedure;
