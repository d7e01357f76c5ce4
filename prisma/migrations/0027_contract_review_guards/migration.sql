-- Contract review, as the last defence: no acceptance without its review, none with a difference open, no change of what was
-- accepted without its record, no reading into a run that nobody told of the change. The functions run as the caller, who
-- sees these tables in the laboratory's scope and nobody in any other.

-- ── ISO/IEC 17025:2017, 7.1.1, 7.1.4 and 7.1.8 ─────────────────────────────────────────────────────────────────────
CREATE FUNCTION demand_order_review() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  reviewed int;
BEGIN
  -- What was saved since it was reviewed was not reviewed. A row that begins as accepted has any review of its own.
  IF TG_OP = 'UPDATE' THEN
    reviewed := OLD.version;
  END IF;
  IF NOT EXISTS (SELECT FROM public.order_review
                  WHERE order_id = NEW.id AND occasion = 'acceptance'
                    AND (reviewed IS NULL OR order_version = reviewed)) THEN
    RAISE EXCEPTION 'order % is accepted without a review', NEW.number
      USING ERRCODE = 'restrict_violation', HINT = 'Answer the questions of the contract review first.';
  END IF;
  IF EXISTS (SELECT FROM public.order_difference difference
              WHERE difference.order_id = NEW.id AND NOT EXISTS (
                SELECT FROM public.order_difference_settlement WHERE difference_id = difference.id)) THEN
    RAISE EXCEPTION 'order % is accepted with a difference open', NEW.number
      USING ERRCODE = 'restrict_violation', HINT = 'Settle it with the customer first.';
  END IF;
  RETURN NEW;
END $$;

-- ── ISO/IEC 17025:2017, 7.1.6: what was accepted changes with a record of it, made in the same transaction ─────────
CREATE FUNCTION keep_accepted_lines() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  owner uuid;
BEGIN
  IF TG_TABLE_NAME = 'order_line' THEN
    owner := OLD.order_id;
  ELSE
    SELECT order_id INTO owner FROM public.order_line WHERE id = OLD.order_line_id;
  END IF;
  IF EXISTS (SELECT FROM public.customer_order
              WHERE id = owner AND state IN ('accepted', 'completed'))
     AND NOT EXISTS (SELECT FROM public.order_change
                      WHERE order_id = owner AND xmin = pg_current_xact_id()::xid) THEN
    RAISE EXCEPTION '% of an accepted order: % without a record of the change', TG_TABLE_NAME, TG_OP
      USING ERRCODE = 'restrict_violation', HINT = 'Change the order, with its reason and who agreed.';
  END IF;
  RETURN NULL;
END $$;

-- ── And who works on it has read it, before anything more is measured ──────────────────────────────────────────────
CREATE FUNCTION demand_changes_acknowledged() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF EXISTS (
    SELECT FROM public.load_place place
      JOIN public.sensor ON sensor.id = place.sensor_id
      JOIN public.order_line line ON line.id = sensor.order_line_id
      JOIN public.order_change change ON change.order_id = line.order_id
      JOIN public.run ON run.id = place.run_id
     WHERE place.run_id = NEW.run_id AND change.changed_at >= run.created_at
       AND NOT EXISTS (SELECT FROM public.order_change_acknowledgment
                        WHERE change_id = change.id AND run_id = NEW.run_id)) THEN
    RAISE EXCEPTION 'run % stands still: a change of an order in its load is not acknowledged', NEW.run_id
      USING ERRCODE = 'restrict_violation', HINT = 'Acknowledge the change at the head of the run.';
  END IF;
  RETURN NULL;
END $$;
REVOKE ALL ON FUNCTION demand_order_review(), keep_accepted_lines(), demand_changes_acknowledged() FROM PUBLIC;

CREATE TRIGGER demand_order_review BEFORE UPDATE ON customer_order FOR EACH ROW
  WHEN (NEW.state = 'accepted' AND OLD.state IS DISTINCT FROM 'accepted')
  EXECUTE FUNCTION demand_order_review();
ALTER TABLE customer_order ENABLE ALWAYS TRIGGER demand_order_review;
-- Its review refers to the order, so it comes after it: asked when the transaction ends.
CREATE CONSTRAINT TRIGGER demand_order_review_of_new AFTER INSERT ON customer_order
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW
  WHEN (NEW.state IN ('accepted', 'completed'))
  EXECUTE FUNCTION demand_order_review();
ALTER TABLE customer_order ENABLE ALWAYS TRIGGER demand_order_review_of_new;

-- After, so that what the row itself may not say is told first.
CREATE TRIGGER keep_accepted_lines AFTER UPDATE OR DELETE ON order_line
  FOR EACH ROW EXECUTE FUNCTION keep_accepted_lines();
ALTER TABLE order_line ENABLE ALWAYS TRIGGER keep_accepted_lines;
CREATE TRIGGER keep_accepted_lines AFTER UPDATE OR DELETE ON order_setpoint
  FOR EACH ROW EXECUTE FUNCTION keep_accepted_lines();
ALTER TABLE order_setpoint ENABLE ALWAYS TRIGGER keep_accepted_lines;

-- After, so that whoever may not write here at all is told that first.
CREATE TRIGGER demand_changes_acknowledged AFTER INSERT ON scan_block
  FOR EACH ROW EXECUTE FUNCTION demand_changes_acknowledged();
ALTER TABLE scan_block ENABLE ALWAYS TRIGGER demand_changes_acknowledged;
CREATE TRIGGER demand_changes_acknowledged AFTER INSERT ON stability_window
  FOR EACH ROW EXECUTE FUNCTION demand_changes_acknowledged();
ALTER TABLE stability_window ENABLE ALWAYS TRIGGER demand_changes_acknowledged;
CREATE TRIGGER demand_changes_acknowledged AFTER INSERT ON evaluation
  FOR EACH ROW EXECUTE FUNCTION demand_changes_acknowledged();
ALTER TABLE evaluation ENABLE ALWAYS TRIGGER demand_changes_acknowledged;
