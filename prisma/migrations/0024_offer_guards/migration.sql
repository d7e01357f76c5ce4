-- Offers and promises: what the database itself refuses.

-- ── One price of a kind is open at a time: another one follows it, never stands beside it ──────────────────────────
CREATE UNIQUE INDEX price_item_one_open ON price_item (key, per, coalesce(type_letter, ''))
  WHERE valid_until IS NULL;

-- ── What is agreed to is what was offered, for the order it was offered for ────────────────────────────────────────
CREATE FUNCTION guard_agreement() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  PERFORM FROM public.quotation offer
    WHERE offer.id = NEW.quotation_id AND offer.order_id = NEW.order_id AND offer.content_hash = NEW.content_hash;
  IF NOT FOUND THEN
    RAISE EXCEPTION 'an agreement names the offer that was shown' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_agreement() FROM PUBLIC;
CREATE TRIGGER guard_agreement BEFORE INSERT ON agreement FOR EACH ROW EXECUTE FUNCTION guard_agreement();
ALTER TABLE agreement ENABLE ALWAYS TRIGGER guard_agreement;

-- ── A parcel holds sensors of its own order; so does a row for invoicing ───────────────────────────────────────────
CREATE FUNCTION guard_shipment_sensor() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  PERFORM FROM public.shipment parcel
    JOIN public.order_line line ON line.order_id = parcel.order_id
    JOIN public.sensor ON sensor.order_line_id = line.id
    WHERE parcel.id = NEW.shipment_id AND sensor.id = NEW.sensor_id;
  IF NOT FOUND THEN
    RAISE EXCEPTION 'this sensor is of another order' USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_shipment_sensor() FROM PUBLIC;
CREATE TRIGGER guard_shipment_sensor BEFORE INSERT ON shipment_sensor
  FOR EACH ROW EXECUTE FUNCTION guard_shipment_sensor();
ALTER TABLE shipment_sensor ENABLE ALWAYS TRIGGER guard_shipment_sensor;

CREATE FUNCTION guard_invoicing_row() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF NEW.sensor_id IS NOT NULL THEN
    PERFORM FROM public.sensor JOIN public.order_line line ON line.id = sensor.order_line_id
      WHERE sensor.id = NEW.sensor_id AND line.order_id = NEW.order_id;
    IF NOT FOUND THEN
      RAISE EXCEPTION 'this sensor is of another order' USING ERRCODE = 'check_violation';
    END IF;
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_invoicing_row() FROM PUBLIC;
CREATE TRIGGER guard_invoicing_row BEFORE INSERT ON invoicing_row
  FOR EACH ROW EXECUTE FUNCTION guard_invoicing_row();
ALTER TABLE invoicing_row ENABLE ALWAYS TRIGGER guard_invoicing_row;
ALTER TABLE invoicing_row ADD CHECK (amount >= 0), ADD CHECK (key <> '');
