-- Holds, custody and nonconforming work: the last defence. The functions run as the caller, who sees these tables in the
-- laboratory's scope and nobody in any other.

ALTER TABLE laboratory ADD CHECK (sensor_retention_days BETWEEN 1 AND 3650);
GRANT UPDATE (sensor_retention_days) ON laboratory TO emfolio_runtime;

-- ── What is on hold is neither loaded nor certified ────────────────────────────────────────────────────────────────
/* The reason that keeps a sensor from going on: a hold on it or on its whole order that is open, or that ended in
   "return unmeasured"; NULL: none. */
CREATE FUNCTION sensor_held(subject uuid) RETURNS text
LANGUAGE sql STABLE SET search_path = pg_catalog, pg_temp
RETURN (
  SELECT h.reason FROM public.sensor s
    JOIN public.order_line l ON l.id = s.order_line_id
    JOIN public.hold h ON h.order_id = l.order_id AND (h.sensor_id IS NULL OR h.sensor_id = s.id)
    LEFT JOIN public.hold_release r ON r.hold_id = h.id
   WHERE s.id = subject AND (r.id IS NULL OR r.outcome = 'return-unmeasured')
   ORDER BY h.placed_at LIMIT 1
);
REVOKE ALL ON FUNCTION sensor_held(uuid) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION sensor_held(uuid) TO emfolio_runtime;

CREATE FUNCTION refuse_held() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  orders uuid;
BEGIN
  IF NEW.sensor_id IS NULL THEN
    RETURN NEW;
  END IF;
  SELECT l.order_id INTO orders FROM public.sensor s JOIN public.order_line l ON l.id = s.order_line_id WHERE s.id = NEW.sensor_id;
  -- Whoever places a hold on this order waits, or is waited for and then seen.
  PERFORM pg_advisory_xact_lock_shared(hashtextextended('hold ' || orders::text, 0));
  IF public.sensor_held(NEW.sensor_id) IS NOT NULL THEN
    RAISE EXCEPTION '%: sensor % is on hold', TG_TABLE_NAME, NEW.sensor_id
      USING ERRCODE = 'check_violation', HINT = 'held';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER refuse_held BEFORE INSERT ON load_place FOR EACH ROW EXECUTE FUNCTION refuse_held();
CREATE TRIGGER refuse_held BEFORE INSERT ON certificate FOR EACH ROW EXECUTE FUNCTION refuse_held();

-- ── A hold stands on a sensor of its own order ─────────────────────────────────────────────────────────────────────
CREATE FUNCTION guard_hold() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  PERFORM pg_advisory_xact_lock(hashtextextended('hold ' || NEW.order_id::text, 0));
  IF NEW.sensor_id IS NOT NULL AND NOT EXISTS (
    SELECT FROM public.sensor s JOIN public.order_line l ON l.id = s.order_line_id
     WHERE s.id = NEW.sensor_id AND l.order_id = NEW.order_id) THEN
    RAISE EXCEPTION 'hold: the sensor is not of this order' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER guard_hold BEFORE INSERT ON hold FOR EACH ROW EXECUTE FUNCTION guard_hold();
ALTER TABLE hold ADD CHECK (kind <> 'nonconforming-work' OR nonconformity_id IS NOT NULL);

-- ── How a hold may end ─────────────────────────────────────────────────────────────────────────────────────────────
CREATE FUNCTION guard_hold_release() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  held record;
BEGIN
  SELECT * INTO held FROM public.hold WHERE id = NEW.hold_id;
  IF EXISTS (SELECT FROM public.question q LEFT JOIN public.answer a ON a.question_id = q.id
              WHERE q.hold_id = NEW.hold_id AND a.id IS NULL) THEN
    RAISE EXCEPTION 'hold_release: the customer has not answered yet' USING ERRCODE = 'check_violation';
  END IF;
  IF NEW.outcome = 'go-on' AND EXISTS (
    SELECT FROM public.question q JOIN public.answer a ON a.question_id = q.id WHERE q.hold_id = NEW.hold_id AND a.insists) THEN
    RAISE EXCEPTION 'hold_release: the customer insists, so the certificate has to say so (ISO/IEC 17025, 7.4.3)'
      USING ERRCODE = 'check_violation';
  END IF;
  IF held.nonconformity_id IS NOT NULL AND NEW.outcome <> 'return-unmeasured' AND NOT EXISTS (
    SELECT FROM public.nonconformity_entry e
     WHERE e.nonconformity_id = held.nonconformity_id AND e.kind = 'resumed' AND e.said_at >= held.placed_at) THEN
    RAISE EXCEPTION 'hold_release: nobody has authorised that this work resumes (ISO/IEC 17025, 7.10.1 f)'
      USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER guard_hold_release BEFORE INSERT ON hold_release FOR EACH ROW EXECUTE FUNCTION guard_hold_release();

-- ── Custody: what was disposed of, or handed over, is not here to be moved ─────────────────────────────────────────
ALTER TABLE custody_event ADD CHECK (kind <> 'stored' OR place_id IS NOT NULL), ADD CHECK (kind <> 'disposed' OR condition <> '');
CREATE FUNCTION guard_custody() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  last text;
BEGIN
  PERFORM pg_advisory_xact_lock(hashtextextended('custody ' || NEW.sensor_id::text, 0));
  SELECT kind INTO last FROM public.custody_event WHERE sensor_id = NEW.sensor_id ORDER BY id DESC LIMIT 1;
  IF last = 'disposed' OR (last = 'handed-over' AND NEW.kind IN ('stored', 'to-furnace', 'to-provider', 'packed', 'disposed')) THEN
    RAISE EXCEPTION 'custody_event: sensor % is not here any more', NEW.sensor_id USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER guard_custody BEFORE INSERT ON custody_event FOR EACH ROW EXECUTE FUNCTION guard_custody();

-- ── Nonconforming work goes step by step, and is closed by somebody else ───────────────────────────────────────────
CREATE FUNCTION guard_nonconformity() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  needed text;
  reopened bigint;
BEGIN
  IF TG_OP = 'INSERT' THEN
    IF NEW.state <> 'open' THEN
      RAISE EXCEPTION 'nonconformity: it begins open' USING ERRCODE = 'check_violation';
    END IF;
    RETURN NEW;
  END IF;
  IF (to_jsonb(NEW) - 'state' - 'version') <> (to_jsonb(OLD) - 'state' - 'version') THEN
    RAISE EXCEPTION 'nonconformity: what was reported stays as it was said; add an entry' USING ERRCODE = 'restrict_violation';
  END IF;
  IF NEW.state = OLD.state THEN
    RETURN NEW;
  END IF;
  needed := CASE OLD.state || ' ' || NEW.state
    WHEN 'open examined' THEN 'effect'
    WHEN 'examined corrected' THEN 'correction'
    WHEN 'corrected closed' THEN 'closed'
    WHEN 'closed open' THEN 'reopened' END;
  IF needed IS NULL THEN
    RAISE EXCEPTION 'nonconformity: not from % to %', OLD.state, NEW.state USING ERRCODE = 'check_violation';
  END IF;
  SELECT coalesce(max(id), 0) INTO reopened FROM public.nonconformity_entry WHERE nonconformity_id = NEW.id AND kind = 'reopened';
  IF needed = 'reopened' AND EXISTS (
    SELECT FROM public.nonconformity_entry WHERE nonconformity_id = NEW.id AND kind = 'closed' AND id > reopened) THEN
    RAISE EXCEPTION 'nonconformity: it is reopened by an entry that says why' USING ERRCODE = 'check_violation';
  ELSIF needed <> 'reopened' AND NOT EXISTS (
    SELECT FROM public.nonconformity_entry WHERE nonconformity_id = NEW.id AND kind = needed AND id > reopened) THEN
    RAISE EXCEPTION 'nonconformity: % needs an entry of kind %', NEW.state, needed USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER guard_nonconformity BEFORE INSERT OR UPDATE ON nonconformity FOR EACH ROW EXECUTE FUNCTION guard_nonconformity();

CREATE FUNCTION guard_nonconformity_entry() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  subject record;
BEGIN
  -- Two persons who write into one story take turns.
  SELECT * INTO subject FROM public.nonconformity WHERE id = NEW.nonconformity_id FOR UPDATE;
  IF subject.state = 'closed' AND NEW.kind NOT IN ('note', 'reopened') THEN
    RAISE EXCEPTION 'nonconformity_entry: % is closed; reopen it first', subject.number USING ERRCODE = 'check_violation';
  END IF;
  IF NEW.kind <> 'closed' THEN
    RETURN NEW;
  END IF;
  IF subject.state <> 'corrected' THEN
    RAISE EXCEPTION 'nonconformity_entry: % is not corrected yet', subject.number USING ERRCODE = 'check_violation';
  END IF;
  IF NEW.said_by_id IS NULL OR NEW.said_by_id = subject.opened_by_id OR EXISTS (
    SELECT FROM public.nonconformity_entry e WHERE e.nonconformity_id = subject.id AND e.said_by_id = NEW.said_by_id
       AND e.kind IN ('correction', 'cause', 'corrective-action')) THEN
    RAISE EXCEPTION 'nonconformity_entry: closed by somebody else than who reported or corrected it' USING ERRCODE = 'check_violation';
  END IF;
  IF EXISTS (SELECT FROM public.hold h LEFT JOIN public.hold_release r ON r.hold_id = h.id
              WHERE h.nonconformity_id = subject.id AND r.id IS NULL) THEN
    RAISE EXCEPTION 'nonconformity_entry: work is still on hold for %', subject.number USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER guard_nonconformity_entry BEFORE INSERT ON nonconformity_entry FOR EACH ROW EXECUTE FUNCTION guard_nonconformity_entry();

DO $$
DECLARE
  guard text[];
BEGIN
  FOREACH guard SLICE 1 IN ARRAY ARRAY[
    ['load_place', 'refuse_held'], ['certificate', 'refuse_held'], ['hold', 'guard_hold'],
    ['hold_release', 'guard_hold_release'], ['custody_event', 'guard_custody'], ['nonconformity', 'guard_nonconformity'],
    ['nonconformity_entry', 'guard_nonconformity_entry']
  ] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER %I', guard[1], guard[2]);
    EXECUTE format('REVOKE ALL ON FUNCTION %I() FROM PUBLIC', guard[2]);
  END LOOP;
END $$;
