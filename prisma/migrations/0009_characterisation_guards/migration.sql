-- Only an accepted characterisation, in date, carries a run; and who measured one does not accept it.

-- What was recorded before a second person was asked for counts as accepted on the day it was recorded: the runs that
-- rest on it stay what they are. (The owner sees rows only where row-level security is not forced on it.)
ALTER TABLE characterisation NO FORCE ROW LEVEL SECURITY;
ALTER TABLE characterisation_decision NO FORCE ROW LEVEL SECURITY;
INSERT INTO characterisation_decision (characterisation_id, decision, reason, decided_at)
  SELECT id, 'accepted', 'recorded before a second person was asked for', recorded_at FROM characterisation
  WHERE NOT EXISTS (SELECT FROM characterisation_decision WHERE characterisation_id = characterisation.id);
ALTER TABLE characterisation FORCE ROW LEVEL SECURITY;
ALTER TABLE characterisation_decision FORCE ROW LEVEL SECURITY;

-- ── Four eyes over the whole of the measuring, not only over the last signature ────────────────────────────────────
CREATE FUNCTION refuse_measurers_decision() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF NEW.decided_by_id IS NULL THEN
    RAISE EXCEPTION '%: a decision names who took it', TG_TABLE_NAME USING ERRCODE = 'check_violation';
  END IF;
  -- A test of inhomogeneity has one person who measured it, whom the other trigger asks about.
  IF TG_TABLE_NAME <> 'characterisation_decision' THEN
    RETURN NEW;
  END IF;
  IF EXISTS (
    SELECT FROM public.characterisation c
      JOIN public.characterisation_run r ON r.id = c.characterisation_run_id
      LEFT JOIN public.characterisation_survey s ON s.characterisation_run_id = r.id
    WHERE c.id = NEW.characterisation_id AND NEW.decided_by_id IN (r.performer_id, s.recorded_by_id)
  ) THEN
    RAISE EXCEPTION 'characterisation_decision: who measured it cannot decide on it' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;

-- ── A run stands on what was accepted by then, and was in date on its day ──────────────────────────────────────────
CREATE FUNCTION refuse_uncharacterised_run() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  today date := (NEW.created_at AT TIME ZONE 'UTC')::date;
  until date;
BEGIN
  SELECT c.valid_until INTO until FROM public.characterisation c
  WHERE c.configuration_id = NEW.configuration_id AND c.performed_on <= today
    AND (SELECT d.decision FROM public.characterisation_decision d
         WHERE d.characterisation_id = c.id AND d.decided_at <= NEW.created_at
         ORDER BY d.id DESC LIMIT 1) = 'accepted'
  ORDER BY c.performed_on DESC, c.recorded_at DESC LIMIT 1;
  IF until IS NULL OR until < today THEN
    RAISE EXCEPTION 'run: its furnace configuration has no accepted characterisation in date on %', today
      USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION refuse_measurers_decision(), refuse_uncharacterised_run() FROM PUBLIC;

CREATE TRIGGER refuse_measurers_decision BEFORE INSERT ON characterisation_decision
  FOR EACH ROW EXECUTE FUNCTION refuse_measurers_decision();
CREATE TRIGGER refuse_measurers_decision BEFORE INSERT ON inhomogeneity_decision
  FOR EACH ROW EXECUTE FUNCTION refuse_measurers_decision();
-- After the row: row-level security has its say first.
CREATE TRIGGER refuse_uncharacterised_run AFTER INSERT OR UPDATE OF configuration_id ON run
  FOR EACH ROW EXECUTE FUNCTION refuse_uncharacterised_run();
ALTER TABLE characterisation_decision ENABLE ALWAYS TRIGGER refuse_measurers_decision;
ALTER TABLE inhomogeneity_decision ENABLE ALWAYS TRIGGER refuse_measurers_decision;

-- The surveys of a submitted characterisation are what was submitted: nothing is added to them behind its back.
CREATE FUNCTION refuse_late_survey() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF (SELECT state FROM public.characterisation_run WHERE id = NEW.characterisation_run_id)
     NOT IN ('planned', 'measuring', 'returned') THEN
    RAISE EXCEPTION 'characterisation_survey: it was submitted already' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION refuse_late_survey() FROM PUBLIC;
CREATE TRIGGER refuse_late_survey BEFORE INSERT ON characterisation_survey
  FOR EACH ROW EXECUTE FUNCTION refuse_late_survey();
