-- A difference that is open stops a change as it stops an acceptance, and stops the furnace (ISO/IEC 17025:2017, 7.1.4); a
-- change that nobody acknowledged stops it too (7.1.6). The functions run as the caller, who sees these tables in the
-- laboratory's scope and nobody in any other.

CREATE FUNCTION demand_differences_settled() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF EXISTS (SELECT FROM public.order_difference difference
              WHERE difference.order_id = NEW.order_id AND NOT EXISTS (
                SELECT FROM public.order_difference_settlement WHERE difference_id = difference.id)) THEN
    RAISE EXCEPTION 'order % is changed with a difference open', NEW.order_id
      USING ERRCODE = 'restrict_violation', HINT = 'Settle it with the customer first.';
  END IF;
  RETURN NULL;
END $$;

CREATE FUNCTION demand_start_settled() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF EXISTS (
    SELECT FROM public.load_place place
      JOIN public.sensor ON sensor.id = place.sensor_id
      JOIN public.order_line line ON line.id = sensor.order_line_id
      JOIN public.order_difference difference ON difference.order_id = line.order_id
     WHERE place.run_id = NEW.run_id AND NOT EXISTS (
       SELECT FROM public.order_difference_settlement WHERE difference_id = difference.id)) THEN
    RAISE EXCEPTION 'run % starts with a difference open of an order in its load', NEW.run_id
      USING ERRCODE = 'restrict_violation', HINT = 'Settle it with the customer first.';
  END IF;
  RETURN NULL;
END $$;
REVOKE ALL ON FUNCTION demand_differences_settled(), demand_start_settled() FROM PUBLIC;

-- After, so that whoever may not write here at all is told that first.
CREATE TRIGGER demand_differences_settled AFTER INSERT ON order_change
  FOR EACH ROW EXECUTE FUNCTION demand_differences_settled();
ALTER TABLE order_change ENABLE ALWAYS TRIGGER demand_differences_settled;
CREATE TRIGGER demand_changes_acknowledged AFTER INSERT ON gate_outcome
  FOR EACH ROW EXECUTE FUNCTION demand_changes_acknowledged();
ALTER TABLE gate_outcome ENABLE ALWAYS TRIGGER demand_changes_acknowledged;
CREATE TRIGGER demand_start_settled AFTER INSERT ON gate_outcome
  FOR EACH ROW EXECUTE FUNCTION demand_start_settled();
ALTER TABLE gate_outcome ENABLE ALWAYS TRIGGER demand_start_settled;
