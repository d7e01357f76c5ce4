-- Only an accepted calibration, in date, of an approved issuer, is used by a run, and only where it holds. The functions
-- run as the caller, who sees these tables in the laboratory's scope and nobody in any other.

-- ── What was recorded before a second person was asked for, and before providers were kept ─────────────────────────
-- It counts as accepted on the day it was recorded, so that runs which rest on it stay what they are; its issuers as
-- approved over the days of their certificates. (The owner sees rows only where row-level security is not forced on it.)
ALTER TABLE calibration NO FORCE ROW LEVEL SECURITY;
ALTER TABLE calibration_decision NO FORCE ROW LEVEL SECURITY;
ALTER TABLE provider NO FORCE ROW LEVEL SECURITY;
ALTER TABLE equipment NO FORCE ROW LEVEL SECURITY;
INSERT INTO calibration_decision (calibration_id, decision, checks, reason, decided_at)
  SELECT id, 'accepted', '[]', 'recorded before a second person was asked for', recorded_at FROM calibration c
  WHERE NOT EXISTS (SELECT FROM calibration_decision d WHERE d.calibration_id = c.id);
INSERT INTO provider (name, route, accreditation, state, approved_from, approved_until, scope, note)
  SELECT c.issuer, min(c.route), max(c.accreditation), 'approved', min(c.performed_on), max(c.due_on),
         (SELECT json_agg(json_build_object('kind', kind, 'range', '') ORDER BY kind)
            FROM (SELECT DISTINCT e.kind FROM calibration o JOIN equipment e ON e.id = o.equipment_id
                   WHERE o.issuer = c.issuer) AS kinds)::text,
         'Taken over from certificates recorded before providers were kept: look at it and approve it anew.'
    FROM calibration c WHERE c.route <> 'in-house' AND c.issuer <> ''
   GROUP BY c.issuer ON CONFLICT (name) DO NOTHING;
ALTER TABLE calibration FORCE ROW LEVEL SECURITY;
ALTER TABLE calibration_decision FORCE ROW LEVEL SECURITY;
ALTER TABLE provider FORCE ROW LEVEL SECURITY;
ALTER TABLE equipment FORCE ROW LEVEL SECURITY;

ALTER TABLE calibration ADD CHECK (differences::json IS NOT NULL),
  ADD CHECK (source <> 'dcc' OR document_id IS NOT NULL);

-- ── A certificate is on record once for a thing, unless what was recorded of it was rejected ───────────────────────
CREATE FUNCTION refuse_second_record() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  -- Two persons who record the same certificate at once take turns; the second sees the first.
  PERFORM pg_advisory_xact_lock(hashtextextended('calibration ' || NEW.equipment_id::text, 0));
  IF EXISTS (
    SELECT FROM public.calibration c
    WHERE c.equipment_id = NEW.equipment_id AND c.certificate = NEW.certificate AND c.id <> NEW.id
      AND (SELECT d.decision FROM public.calibration_decision d WHERE d.calibration_id = c.id ORDER BY d.id DESC LIMIT 1)
          IS DISTINCT FROM 'rejected'
  ) THEN
    RAISE EXCEPTION 'calibration: certificate % is recorded for this equipment already', NEW.certificate
      USING ERRCODE = 'unique_violation';
  END IF;
  RETURN NULL;
END $$;

-- ── A decision names who took it, comes after what it decides on, is not dated back, and a rejection is final ──────
CREATE FUNCTION guard_calibration_decision() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  subject record;
BEGIN
  IF NEW.decided_by_id IS NULL THEN
    RAISE EXCEPTION 'calibration_decision: a decision names who took it' USING ERRCODE = 'check_violation';
  END IF;
  SELECT equipment_id, recorded_at INTO subject FROM public.calibration WHERE id = NEW.calibration_id;
  PERFORM pg_advisory_xact_lock(hashtextextended('calibration ' || subject.equipment_id::text, 0));
  IF NEW.decided_at < subject.recorded_at THEN
    RAISE EXCEPTION 'calibration_decision: it cannot be decided on before it was recorded' USING ERRCODE = 'check_violation';
  END IF;
  IF EXISTS (SELECT FROM public.calibration_decision d WHERE d.calibration_id = NEW.calibration_id AND d.decision = 'rejected') THEN
    RAISE EXCEPTION 'calibration_decision: what was rejected stays rejected' USING ERRCODE = 'check_violation';
  END IF;
  IF EXISTS (
    SELECT FROM public.run r
    WHERE r.created_at > NEW.decided_at
      AND (subject.equipment_id IN (r.voltmeter_id, r.scanner_id, r.ambient_id)
           OR EXISTS (SELECT FROM public.load_place p WHERE p.run_id = r.id
                        AND subject.equipment_id IN (p.equipment_id, p.junction_id, p.lead_id)))
  ) THEN
    RAISE EXCEPTION 'calibration_decision: it cannot be dated back before a run that uses the equipment'
      USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;

-- ── Who may be chosen ──────────────────────────────────────────────────────────────────────────────────────────────
CREATE FUNCTION calibration_in_force(subject uuid, moment timestamptz) RETURNS uuid
LANGUAGE sql STABLE SET search_path = pg_catalog, pg_temp
RETURN (
  SELECT c.id FROM public.calibration c
  WHERE c.equipment_id = subject AND c.performed_on <= (moment AT TIME ZONE 'UTC')::date
    AND (SELECT d.decision FROM public.calibration_decision d
          WHERE d.calibration_id = c.id AND d.decided_at <= moment ORDER BY d.id DESC LIMIT 1) = 'accepted'
  ORDER BY c.performed_on DESC, c.recorded_at DESC LIMIT 1
);

/* The ground on which equipment cannot be used by a run made at a moment; NULL: none. */
CREATE FUNCTION use_ground(subject uuid, moment timestamptz) RETURNS text
LANGUAGE plpgsql STABLE SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  today date := (moment AT TIME ZONE 'UTC')::date;
  thing record;
  used record;
BEGIN
  SELECT kind, state INTO thing FROM public.equipment WHERE id = subject;
  IF thing.state IS NULL THEN
    RETURN 'not-recorded';
  ELSIF thing.state <> 'in-service' THEN
    RETURN CASE thing.state WHEN 'suspect' THEN 'suspect' ELSE 'not-in-service' END;
  END IF;
  SELECT * INTO used FROM public.calibration WHERE id = public.calibration_in_force(subject, moment);
  IF used.id IS NULL THEN
    -- What these add to a budget may be what the laboratory itself found.
    IF thing.kind IN ('scanner', 'junction', 'lead') THEN
      RETURN NULL;
    END IF;
    RETURN CASE WHEN EXISTS (SELECT FROM public.calibration WHERE equipment_id = subject)
                THEN 'not-accepted' ELSE 'never-calibrated' END;
  ELSIF used.due_on < today THEN
    RETURN 'not-in-date';
  ELSIF used.route <> 'in-house' AND NOT EXISTS (
    SELECT FROM public.provider p
    WHERE CASE WHEN used.provider_id IS NULL THEN p.name = used.issuer ELSE p.id = used.provider_id END
      AND p.state = 'approved' AND used.performed_on BETWEEN p.approved_from AND p.approved_until
      AND p.scope::jsonb @> jsonb_build_array(jsonb_build_object('kind', thing.kind))
  ) THEN
    RETURN 'issuer-not-approved';
  END IF;
  RETURN NULL;
END $$;

CREATE FUNCTION refuse_unusable() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  moment timestamptz;
  chosen uuid[];
  refused record;
BEGIN
  IF TG_TABLE_NAME = 'run' THEN
    moment := NEW.created_at;
    chosen := ARRAY[NEW.voltmeter_id, NEW.scanner_id, NEW.ambient_id];
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

/* Each setpoint of a run lies where the certificate of each of its references holds. */
CREATE FUNCTION refuse_beyond_certificate() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  beyond double precision;
BEGIN
  SELECT s.celsius INTO beyond
    FROM public.run r
    JOIN public.run_setpoint s ON s.run_id = r.id
    JOIN public.load_place p ON p.run_id = r.id AND p.kind = 'reference'
    JOIN public.calibration c ON c.id = public.calibration_in_force(p.equipment_id, r.created_at)
    -- Stated beside the findings, or as the findings say: of certificates recorded before it was stated.
    CROSS JOIN LATERAL (
      SELECT coalesce(c.from_celsius, (c.findings::jsonb #>> '{equation,fromCelsius}')::double precision,
                      min((point ->> 'celsius')::double precision) - max(reach)) AS lowest,
             coalesce(c.to_celsius, (c.findings::jsonb #>> '{equation,toCelsius}')::double precision,
                      max((point ->> 'celsius')::double precision) + max(reach)) AS highest
        FROM (SELECT point, CASE count(*) OVER () WHEN 1
                     THEN coalesce((c.findings::jsonb ->> 'singlePointReachCelsius')::double precision, 0) ELSE 0 END AS reach
                FROM jsonb_array_elements(coalesce(c.findings::jsonb -> 'points', '[]')) AS points (point)) AS points
    ) AS certified
   WHERE r.id = NEW.run_id AND (s.celsius < certified.lowest OR s.celsius > certified.highest)
   LIMIT 1;
  IF beyond IS NOT NULL THEN
    RAISE EXCEPTION '%: no certificate of a reference is carried beyond its range, to % °C', TG_TABLE_NAME, beyond
      USING ERRCODE = 'check_violation', HINT = 'reference-range';
  END IF;
  RETURN NULL;
END $$;
REVOKE ALL ON FUNCTION refuse_second_record(), guard_calibration_decision(), refuse_unusable(),
  refuse_beyond_certificate(), calibration_in_force(uuid, timestamptz), use_ground(uuid, timestamptz) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION calibration_in_force(uuid, timestamptz), use_ground(uuid, timestamptz) TO emfolio_runtime;

-- After, so that what the row itself may not say is told first.
CREATE TRIGGER refuse_second_record AFTER INSERT ON calibration FOR EACH ROW EXECUTE FUNCTION refuse_second_record();
CREATE TRIGGER guard_decision BEFORE INSERT ON calibration_decision
  FOR EACH ROW EXECUTE FUNCTION guard_calibration_decision();
ALTER TABLE calibration ENABLE ALWAYS TRIGGER refuse_second_record;
ALTER TABLE calibration_decision ENABLE ALWAYS TRIGGER guard_decision;
-- After the row: row-level security has its say first.
CREATE TRIGGER refuse_unusable AFTER INSERT OR UPDATE OF voltmeter_id, scanner_id, ambient_id ON run
  FOR EACH ROW EXECUTE FUNCTION refuse_unusable();
CREATE TRIGGER refuse_unusable AFTER INSERT OR UPDATE OF equipment_id, junction_id, lead_id ON load_place
  FOR EACH ROW EXECUTE FUNCTION refuse_unusable();
CREATE TRIGGER refuse_beyond_certificate AFTER INSERT OR UPDATE OF equipment_id ON load_place
  FOR EACH ROW EXECUTE FUNCTION refuse_beyond_certificate();
CREATE TRIGGER refuse_beyond_certificate AFTER INSERT OR UPDATE OF celsius ON run_setpoint
  FOR EACH ROW EXECUTE FUNCTION refuse_beyond_certificate();
