-- No certificate without its signature (ISO/IEC 17025:2017, 7.8.2.1 o). The signature refers to the certificate, so that it
-- comes after it: asked when the transaction ends. Certificates of before signatures were kept stay as they are. The
-- function runs as the caller, who sees signatures in the laboratory's scope and in no other.

CREATE FUNCTION demand_signature() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  PERFORM FROM public.signature s
    WHERE s.certificate_id = NEW.id AND s.customer_id = NEW.customer_id AND s.content_hash = NEW.content_hash
      AND s.person_id = NEW.signed_by_id AND s.signed_at = NEW.signed_at;
  IF NOT FOUND THEN
    RAISE EXCEPTION 'certificate % is not signed: no signature of its content, its signatory and its moment', NEW.number
      USING ERRCODE = 'check_violation', HINT = 'Store the signature in the same transaction.';
  END IF;
  RETURN NULL;
END $$;
REVOKE ALL ON FUNCTION demand_signature() FROM PUBLIC;
CREATE CONSTRAINT TRIGGER demand_signature AFTER INSERT ON certificate
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION demand_signature();
ALTER TABLE certificate ENABLE ALWAYS TRIGGER demand_signature;
