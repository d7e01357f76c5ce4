-- Equipment begins as received and enters service by verification, step by step; a furnace is equipment too.

ALTER TABLE laboratory ADD CHECK (service_policy::json IS NOT NULL);

-- ── Furnaces from before they had a row among the equipment get one; their tags are equal ──────────────────────────
-- They were in use, and stay so. (The owner sees rows only where row-level security is not forced on it.)
ALTER TABLE equipment NO FORCE ROW LEVEL SECURITY;
ALTER TABLE furnace NO FORCE ROW LEVEL SECURITY;
INSERT INTO equipment (tag, kind, maker, model, serial, state, particulars)
  SELECT tag, 'furnace', maker, name, serial, 'in-service', '{"kind":"furnace"}' FROM furnace
   WHERE equipment_id IS NULL ON CONFLICT (tag) DO NOTHING;
UPDATE furnace SET equipment_id = equipment.id FROM equipment
 WHERE equipment.tag = furnace.tag AND equipment.kind = 'furnace' AND furnace.equipment_id IS NULL;
ALTER TABLE equipment FORCE ROW LEVEL SECURITY;
ALTER TABLE furnace FORCE ROW LEVEL SECURITY;

CREATE FUNCTION guard_furnace_equipment() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF NOT EXISTS (SELECT FROM public.equipment
                  WHERE id = NEW.equipment_id AND kind = 'furnace' AND tag = NEW.tag) THEN
    RAISE EXCEPTION 'furnace %: it has its own row among the equipment, with the same tag', NEW.tag
      USING ERRCODE = 'check_violation';
  END IF;
  RETURN NULL;
END $$;

-- ── States without a jump, ISO/IEC 17025 6.4.4 and 6.4.9 ───────────────────────────────────────────────────────────
-- The same table as `transitions` in lib/domain/equipment. The function runs as the caller, who sees the logbook in the
-- laboratory's scope and nobody in any other.
CREATE FUNCTION guard_equipment_state() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF TG_OP = 'INSERT' THEN
    IF NEW.state <> 'received' THEN
      RAISE EXCEPTION 'equipment %: it begins as received', NEW.tag USING ERRCODE = 'check_violation';
    END IF;
    RETURN NULL;
  END IF;
  IF (NEW.tag, NEW.kind) IS DISTINCT FROM (OLD.tag, OLD.kind) THEN
    RAISE EXCEPTION 'equipment %: it keeps its tag and its kind', OLD.tag USING ERRCODE = 'check_violation';
  END IF;
  IF NEW.state = OLD.state THEN
    RETURN NULL;
  END IF;
  IF (OLD.state, NEW.state) NOT IN (
    ('received', 'verified'), ('received', 'under-repair'), ('received', 'retired'),
    ('verified', 'in-service'), ('verified', 'suspect'), ('verified', 'under-repair'), ('verified', 'retired'),
    ('in-service', 'suspect'), ('in-service', 'under-repair'), ('in-service', 'retired'),
    ('suspect', 'verified'), ('suspect', 'under-repair'), ('suspect', 'retired'),
    ('under-repair', 'verified'), ('under-repair', 'retired')
  ) THEN
    RAISE EXCEPTION 'equipment %: it does not go from % to %', NEW.tag, OLD.state, NEW.state
      USING ERRCODE = 'check_violation';
  END IF;
  -- What left service comes back by a verification of after it: leaving is written into the logbook as well.
  IF NEW.state IN ('suspect', 'under-repair') AND NOT EXISTS (
    SELECT FROM public.equipment_entry against
     WHERE against.equipment_id = NEW.id
       AND (against.kind IN ('damage', 'repair', 'adjustment') OR against.outcome = 'failed')
       AND NOT EXISTS (SELECT FROM public.equipment_entry later
                        WHERE later.equipment_id = NEW.id AND later.id > against.id
                          AND later.kind = 'verification' AND later.outcome = 'passed')
  ) THEN
    RAISE EXCEPTION 'equipment %: its logbook says nothing of why it becomes %', NEW.tag, NEW.state
      USING ERRCODE = 'check_violation';
  END IF;
  IF NEW.state IN ('verified', 'in-service') AND NOT EXISTS (
    SELECT FROM public.equipment_entry passed
     WHERE passed.equipment_id = NEW.id AND passed.kind = 'verification' AND passed.outcome = 'passed'
       AND NOT EXISTS (SELECT FROM public.equipment_entry later
                        WHERE later.equipment_id = NEW.id AND (later.id > passed.id OR later.happened_on > passed.happened_on)
                          AND (later.kind IN ('damage', 'repair', 'adjustment') OR later.outcome = 'failed'))
  ) THEN
    RAISE EXCEPTION 'equipment %: no verification has passed since it last gave cause for one', NEW.tag
      USING ERRCODE = 'check_violation';
  END IF;
  RETURN NULL;
END $$;

-- ── A run is made in a furnace that is in service ──────────────────────────────────────────────────────────────────
CREATE FUNCTION refuse_unfit_furnace() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  unfit record;
BEGIN
  SELECT e.tag, e.state INTO unfit
    FROM public.furnace_configuration c
    JOIN public.furnace f ON f.id = c.furnace_id
    JOIN public.equipment e ON e.id = f.equipment_id
   WHERE c.id = NEW.configuration_id AND e.state <> 'in-service';
  IF unfit.tag IS NOT NULL THEN
    RAISE EXCEPTION 'run: furnace % is %', unfit.tag, unfit.state
      USING ERRCODE = 'check_violation', HINT = CASE unfit.state WHEN 'suspect' THEN 'suspect' ELSE 'not-in-service' END;
  END IF;
  RETURN NULL;
END $$;
REVOKE ALL ON FUNCTION guard_furnace_equipment(), guard_equipment_state(), refuse_unfit_furnace() FROM PUBLIC;

-- After the row: row-level security has its say first.
CREATE TRIGGER guard_equipment AFTER INSERT OR UPDATE OF tag, equipment_id ON furnace
  FOR EACH ROW EXECUTE FUNCTION guard_furnace_equipment();
CREATE TRIGGER guard_state AFTER INSERT OR UPDATE ON equipment
  FOR EACH ROW EXECUTE FUNCTION guard_equipment_state();
ALTER TABLE equipment ENABLE ALWAYS TRIGGER guard_state;
CREATE TRIGGER refuse_unfit_furnace AFTER INSERT OR UPDATE OF configuration_id ON run
  FOR EACH ROW EXECUTE FUNCTION refuse_unfit_furnace();
