-- Standards and chains: privileges, append-only evidence, row-level security, words and references of the new tables.

-- ── Working tables may change; evidence is only added to ───────────────────────────────────────────────────────────
GRANT SELECT, INSERT, UPDATE ON provider, scope_line, procedure, procedure_revision, characterisation_run
TO emfolio_runtime;

GRANT SELECT, INSERT ON
  equipment_entry, reference_use, evidence_document, calibration_parent, calibration_decision,
  characterisation_survey, characterisation_decision, inhomogeneity_test, inhomogeneity_decision,
  bench_check, gate_outcome, gate_override, trace_node, trace_edge
TO emfolio_runtime;

GRANT USAGE ON SEQUENCE
  equipment_entry_id_seq, reference_use_id_seq, calibration_decision_id_seq, characterisation_decision_id_seq,
  inhomogeneity_decision_id_seq, bench_check_id_seq, gate_outcome_id_seq, gate_override_id_seq, trace_edge_id_seq
TO emfolio_runtime;

-- A characterisation is evidence from now on: what it says never changes.
REVOKE UPDATE ON characterisation FROM emfolio_runtime;

DO $$
DECLARE
  evidence text;
BEGIN
  FOREACH evidence IN ARRAY ARRAY[
    'characterisation', 'equipment_entry', 'reference_use', 'evidence_document', 'calibration_parent',
    'calibration_decision', 'characterisation_survey', 'characterisation_decision', 'inhomogeneity_test',
    'inhomogeneity_decision', 'bench_check', 'gate_outcome', 'gate_override', 'trace_node', 'trace_edge'
  ] LOOP
    EXECUTE format('CREATE TRIGGER refuse_change BEFORE UPDATE OR DELETE ON %I FOR EACH ROW EXECUTE FUNCTION refuse_change()', evidence);
    EXECUTE format('CREATE TRIGGER refuse_truncate BEFORE TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', evidence);
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER refuse_change', evidence);
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER refuse_truncate', evidence);
  END LOOP;
END $$;

-- ── Row-level security: the laboratory's own, all of it; a customer sees the tests of its sensors ──────────────────
DO $$
DECLARE
  relation text;
BEGIN
  FOREACH relation IN ARRAY ARRAY[
    'equipment_entry', 'reference_use', 'evidence_document', 'calibration_parent', 'calibration_decision', 'provider',
    'scope_line', 'procedure', 'procedure_revision', 'characterisation_run', 'characterisation_survey',
    'characterisation_decision', 'inhomogeneity_test', 'inhomogeneity_decision', 'bench_check', 'gate_outcome',
    'gate_override', 'trace_node', 'trace_edge'
  ] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', relation);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', relation);
    EXECUTE format('CREATE POLICY laboratory ON %I TO emfolio_runtime
                    USING ((SELECT app_is_laboratory())) WITH CHECK ((SELECT app_is_laboratory()))', relation);
  END LOOP;
END $$;

CREATE POLICY customer ON inhomogeneity_test FOR SELECT TO emfolio_runtime
  USING (customer_id = (SELECT app_customer_id()));

-- ── Finite numbers ─────────────────────────────────────────────────────────────────────────────────────────────────
DO $$
DECLARE
  place record;
BEGIN
  FOR place IN
    SELECT columns.table_name, columns.column_name FROM information_schema.columns
    WHERE table_schema = 'public' AND data_type = 'double precision'
      AND NOT EXISTS (SELECT FROM pg_constraint
                      WHERE conname = columns.table_name || '_' || columns.column_name || '_finite')
  LOOP
    EXECUTE format('ALTER TABLE %1$I ADD CONSTRAINT %3$I CHECK (%2$I > ''-Infinity'' AND %2$I < ''Infinity'')',
                   place.table_name, place.column_name, place.table_name || '_' || place.column_name || '_finite');
  END LOOP;
END $$;

-- ── Digests are 32 bytes ───────────────────────────────────────────────────────────────────────────────────────────
ALTER TABLE evidence_document ADD CHECK (octet_length(sha256) = 32), ADD CHECK (octet_length(bytes) > 0);
ALTER TABLE evidence_document ADD CONSTRAINT evidence_document_is_its_hash CHECK (sha256 = sha256(bytes));
ALTER TABLE gate_outcome ADD CHECK (octet_length(plan_digest) = 32);
ALTER TABLE trace_edge ADD CHECK (octet_length(evidence_sha256) = 32);

-- ── Words ──────────────────────────────────────────────────────────────────────────────────────────────────────────
ALTER TABLE equipment DROP CONSTRAINT equipment_kind_word, DROP CONSTRAINT equipment_state_word;
DO $$
DECLARE
  place text[];
BEGIN
  FOREACH place SLICE 1 IN ARRAY ARRAY[
    ['equipment', 'kind', 'reference|thermometer|voltmeter|scanner|junction|ambient|lead|furnace'],
    ['equipment', 'state', 'received|verified|in-service|suspect|under-repair|retired'],
    ['equipment_entry', 'kind', 'verification|intermediate-check|maintenance|damage|repair|adjustment|anneal|check-after-anneal|move|label|note'],
    ['equipment_entry', 'outcome', 'passed|failed|none'],
    ['calibration', 'source', 'typed|dcc|in-house'],
    ['calibration_parent', 'kind', 'laboratory-standard|national-standard|fixed-point|si'],
    ['calibration_parent', 'route', 'nmi|accredited|in-house|other|realisation'],
    ['calibration_decision', 'decision', 'accepted|rejected'],
    ['provider', 'route', 'nmi|accredited|other'],
    ['provider', 'state', 'candidate|approved|suspended'],
    ['scope_line', 'type_letter', '[A-Z]'],
    ['procedure_revision', 'state', 'draft|current|withdrawn'],
    ['characterisation', 'source', 'typed|measured'],
    ['characterisation_run', 'state', 'planned|measuring|submitted|returned|accepted|abandoned'],
    ['characterisation_survey', 'kind', 'axial|positions|stability|immersion'],
    ['characterisation_decision', 'decision', 'accepted|returned'],
    ['inhomogeneity_decision', 'decision', 'accepted|returned'],
    ['bench_check', 'kind', 'warm-up|shorted-zero|channel-zero|voltage-point|junction-thermometer|ambient'],
    ['gate_outcome', 'verdict', 'may-start|needs-reasons|refused'],
    ['trace_node', 'kind', 'result|run|standard|calibration|national-standard|fixed-point|si']
  ] LOOP
    EXECUTE format('ALTER TABLE %1$I ADD CONSTRAINT %4$I CHECK (%2$I ~ %3$L)',
                   place[1], place[2], '^(' || place[3] || ')$', place[1] || '_' || place[2] || '_word');
  END LOOP;
END $$;

-- ── One table at a time ────────────────────────────────────────────────────────────────────────────────────────────
ALTER TABLE equipment
  ADD CHECK (requirement::json IS NOT NULL), ADD CHECK (calibration_interval_months > 0),
  ADD CHECK (check_interval_days > 0), ADD CHECK (maintenance_interval_days > 0);
ALTER TABLE equipment_entry ADD CHECK (summary <> ''), ADD CHECK (figures::json IS NOT NULL);
ALTER TABLE reference_use
  ADD CHECK (hours_in_furnace >= 0), ADD CHECK (hours_above_1000 BETWEEN 0 AND hours_in_furnace);
ALTER TABLE calibration ADD CHECK (from_celsius < to_celsius),
  ADD CHECK ((source = 'in-house') = (in_house_certificate_id IS NOT NULL));
ALTER TABLE calibration_parent
  ADD CHECK (position >= 1), ADD CHECK (title <> ''), ADD CHECK (expanded > 0), ADD CHECK (coverage_factor >= 1),
  -- A parent stands below one that was named before it: no circle can be written.
  ADD CHECK (below IS NULL OR below < position);
ALTER TABLE calibration_decision
  ADD CHECK (checks::json IS NOT NULL), ADD CHECK (decision = 'accepted' OR reason <> '');
ALTER TABLE provider ADD CHECK (name <> ''), ADD CHECK (approved_from <= approved_until), ADD CHECK (scope::json IS NOT NULL),
  ADD CHECK (state <> 'approved' OR (approved_from IS NOT NULL AND approved_until IS NOT NULL));
ALTER TABLE scope_line ADD CHECK (from_celsius < to_celsius), ADD CHECK (capability::json IS NOT NULL),
  ADD CHECK (valid_from <= valid_until), ADD CHECK (source <> '');
ALTER TABLE procedure ADD CHECK (key <> ''), ADD CHECK (title <> '');
ALTER TABLE procedure_revision ADD CHECK (revision >= 1), ADD CHECK (budget_inputs::json IS NOT NULL),
  ADD CHECK (gate_policy::json IS NOT NULL), ADD CHECK ((state = 'draft') = (current_from IS NULL)),
  ADD CHECK ((state = 'withdrawn') = (withdrawn_at IS NOT NULL)),
  -- A method is verified before it is used, 7.2.1.5.
  ADD CHECK (state = 'draft' OR verification <> '');
CREATE UNIQUE INDEX procedure_revision_one_current ON procedure_revision (procedure_id) WHERE state = 'current';
ALTER TABLE furnace
  ADD CHECK (zones >= 1), ADD CHECK (best_immersion_millimetre > 0), ADD CHECK (working_length_millimetre > 0),
  ADD CHECK (controller_setpoints::json IS NOT NULL),
  ADD CHECK (ramp_up_celsius_per_hour > 0), ADD CHECK (ramp_down_celsius_per_hour > 0);
ALTER TABLE furnace_configuration ADD CHECK (bores::json IS NOT NULL), ADD CHECK (bundle_diameter_millimetre > 0);
ALTER TABLE characterisation ADD CHECK (figures IS NULL OR figures::json IS NOT NULL),
  ADD CHECK ((source = 'measured') = (figures IS NOT NULL AND characterisation_run_id IS NOT NULL));
ALTER TABLE characterisation_run ADD CHECK (plan::json IS NOT NULL);
ALTER TABLE characterisation_survey
  ADD CHECK (readings::json IS NOT NULL), ADD CHECK (evaluation::json IS NOT NULL);
ALTER TABLE characterisation_decision ADD CHECK (decision = 'accepted' OR reason <> '');
ALTER TABLE inhomogeneity_test
  ADD CHECK (readings::json IS NOT NULL), ADD CHECK (evaluation::json IS NOT NULL),
  ADD CHECK (num_nonnulls(sensor_id, equipment_id) = 1), ADD CHECK ((sensor_id IS NULL) = (customer_id IS NULL));
ALTER TABLE inhomogeneity_decision ADD CHECK (decision = 'accepted' OR reason <> '');
ALTER TABLE order_line
  ADD CHECK (use_from_celsius < use_to_celsius), ADD CHECK (largest_interval_celsius > 0),
  ADD CHECK (maximum_celsius BETWEEN -273.15 AND 3000);
ALTER TABLE sensor ADD CHECK (build::json IS NOT NULL);
ALTER TABLE bench_check ADD CHECK (figures::json IS NOT NULL);
ALTER TABLE gate_outcome ADD CHECK (rows::json IS NOT NULL), ADD CHECK (policy::json IS NOT NULL);
ALTER TABLE gate_override ADD CHECK (code <> ''), ADD CHECK (reason <> '');
ALTER TABLE trace_node ADD CHECK (title <> ''), ADD CHECK (facts::json IS NOT NULL);
ALTER TABLE trace_edge ADD CHECK (from_id <> to_id), ADD CHECK (role <> ''), ADD CHECK (expanded > 0), ADD CHECK (coverage_factor >= 1);

-- ── References ─────────────────────────────────────────────────────────────────────────────────────────────────────
ALTER TABLE characterisation_run ADD UNIQUE (id, configuration_id);
ALTER TABLE equipment_entry
  ADD FOREIGN KEY (document_id) REFERENCES evidence_document (id), ADD FOREIGN KEY (recorded_by_id) REFERENCES person (id);
ALTER TABLE reference_use ADD FOREIGN KEY (run_id) REFERENCES run (id);
ALTER TABLE evidence_document ADD FOREIGN KEY (received_by_id) REFERENCES person (id);
ALTER TABLE calibration
  ADD FOREIGN KEY (provider_id) REFERENCES provider (id), ADD FOREIGN KEY (document_id) REFERENCES evidence_document (id),
  ADD FOREIGN KEY (in_house_certificate_id) REFERENCES certificate (id);
ALTER TABLE calibration_parent
  ADD FOREIGN KEY (calibration_id, below) REFERENCES calibration_parent (calibration_id, position);
ALTER TABLE calibration_decision ADD FOREIGN KEY (decided_by_id) REFERENCES person (id);
ALTER TABLE scope_line ADD FOREIGN KEY (recorded_by_id) REFERENCES person (id);
ALTER TABLE procedure_revision
  ADD FOREIGN KEY (recorded_by_id) REFERENCES person (id), ADD FOREIGN KEY (current_by_id) REFERENCES person (id);
ALTER TABLE furnace ADD FOREIGN KEY (equipment_id) REFERENCES equipment (id);
ALTER TABLE characterisation
  ADD FOREIGN KEY (recorded_by_id) REFERENCES person (id),
  ADD FOREIGN KEY (characterisation_run_id, configuration_id) REFERENCES characterisation_run (id, configuration_id);
ALTER TABLE characterisation_run ADD FOREIGN KEY (performer_id) REFERENCES person (id);
ALTER TABLE characterisation_survey
  ADD FOREIGN KEY (document_id) REFERENCES evidence_document (id), ADD FOREIGN KEY (recorded_by_id) REFERENCES person (id);
ALTER TABLE characterisation_decision ADD FOREIGN KEY (decided_by_id) REFERENCES person (id);
ALTER TABLE inhomogeneity_test
  ADD FOREIGN KEY (sensor_id, customer_id) REFERENCES sensor (id, customer_id),
  ADD FOREIGN KEY (equipment_id) REFERENCES equipment (id),
  ADD FOREIGN KEY (document_id) REFERENCES evidence_document (id), ADD FOREIGN KEY (recorded_by_id) REFERENCES person (id);
ALTER TABLE inhomogeneity_decision ADD FOREIGN KEY (decided_by_id) REFERENCES person (id);
ALTER TABLE laboratory ADD FOREIGN KEY (accreditation_mark_id) REFERENCES evidence_document (id);
ALTER TABLE run
  ADD FOREIGN KEY (procedure_revision_id) REFERENCES procedure_revision (id), ADD FOREIGN KEY (ambient_id) REFERENCES equipment (id);
ALTER TABLE load_place ADD FOREIGN KEY (lead_id) REFERENCES equipment (id);
ALTER TABLE bench_check
  ADD FOREIGN KEY (run_id) REFERENCES run (id), ADD FOREIGN KEY (checked_by_id) REFERENCES person (id);
ALTER TABLE gate_outcome
  ADD FOREIGN KEY (run_id) REFERENCES run (id), ADD FOREIGN KEY (assessed_by_id) REFERENCES person (id);
ALTER TABLE gate_override
  ADD FOREIGN KEY (run_id) REFERENCES run (id), ADD FOREIGN KEY (said_by_id) REFERENCES person (id);
ALTER TABLE trace_edge
  ADD FOREIGN KEY (from_id) REFERENCES trace_node (id), ADD FOREIGN KEY (to_id) REFERENCES trace_node (id);

-- ── Four eyes, in the database: who recorded or measured a thing does not accept it ────────────────────────────────
-- The owner sees every row of these tables only through a policy: the functions below run as the caller, who does.

CREATE FUNCTION refuse_own_decision() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  maker uuid;
BEGIN
  CASE TG_TABLE_NAME
    WHEN 'calibration_decision' THEN
      SELECT recorded_by_id INTO maker FROM public.calibration WHERE id = NEW.calibration_id;
    WHEN 'characterisation_decision' THEN
      SELECT recorded_by_id INTO maker FROM public.characterisation WHERE id = NEW.characterisation_id;
    WHEN 'inhomogeneity_decision' THEN
      SELECT recorded_by_id INTO maker FROM public.inhomogeneity_test WHERE id = NEW.test_id;
  END CASE;
  IF maker IS NOT NULL AND maker = NEW.decided_by_id THEN
    RAISE EXCEPTION '%: who recorded it cannot decide on it', TG_TABLE_NAME USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION refuse_own_decision() FROM PUBLIC;

DO $$
DECLARE
  relation text;
BEGIN
  FOREACH relation IN ARRAY ARRAY['calibration_decision', 'characterisation_decision', 'inhomogeneity_decision'] LOOP
    EXECUTE format('CREATE TRIGGER refuse_own_decision BEFORE INSERT ON %I FOR EACH ROW EXECUTE FUNCTION refuse_own_decision()', relation);
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER refuse_own_decision', relation);
  END LOOP;
END $$;

-- ── Content that is fixed once it counts ───────────────────────────────────────────────────────────────────────────
CREATE FUNCTION guard_procedure_revision() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF OLD.state <> 'draft' AND (NEW.budget_inputs, NEW.gate_policy, NEW.revision, NEW.procedure_id, NEW.verification, NEW.change, NEW.current_from)
     IS DISTINCT FROM (OLD.budget_inputs, OLD.gate_policy, OLD.revision, OLD.procedure_id, OLD.verification, OLD.change, OLD.current_from) THEN
    RAISE EXCEPTION 'a procedure revision is fixed once it has left draft' USING ERRCODE = 'insufficient_privilege';
  END IF;
  IF NEW.state <> OLD.state AND (OLD.state, NEW.state) NOT IN (('draft', 'current'), ('current', 'withdrawn')) THEN
    RAISE EXCEPTION 'a procedure revision goes from draft to current to withdrawn' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;

CREATE FUNCTION guard_scope_line() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF (NEW.id, NEW.type_letter, NEW.from_celsius, NEW.to_celsius, NEW.capability, NEW.valid_from, NEW.source)
     IS DISTINCT FROM (OLD.id, OLD.type_letter, OLD.from_celsius, OLD.to_celsius, OLD.capability, OLD.valid_from, OLD.source)
     OR (OLD.valid_until IS NOT NULL AND NEW.valid_until IS DISTINCT FROM OLD.valid_until) THEN
    RAISE EXCEPTION 'a line of the scope is ended, never changed' USING ERRCODE = 'insufficient_privilege';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_procedure_revision(), guard_scope_line() FROM PUBLIC;

CREATE TRIGGER guard_content BEFORE UPDATE ON procedure_revision FOR EACH ROW EXECUTE FUNCTION guard_procedure_revision();
CREATE TRIGGER guard_content BEFORE UPDATE ON scope_line FOR EACH ROW EXECUTE FUNCTION guard_scope_line();
ALTER TABLE procedure_revision ENABLE ALWAYS TRIGGER guard_content;
ALTER TABLE scope_line ENABLE ALWAYS TRIGGER guard_content;
