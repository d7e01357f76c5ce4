-- Lists that read whole tables at the size of years.

-- The last day of a certificate's measurements, by which its sensor comes due: read from what was signed, once, and not
-- from the text of every certificate of a customer at each visit. The content is canonical JSON (RFC 8785): its keys are
-- in order, so that the first is the certificate's own, and no text within it can look like this.
ALTER TABLE certificate
  ADD COLUMN performed_to text GENERATED ALWAYS AS
    (substring(content FROM '"performedTo":"([0-9]{4}-[0-9]{2}-[0-9]{2})"')) STORED;

-- Which certificates have no document yet: a handful, at any number of certificates. Written by the database alone: a
-- row comes with the certificate and goes with its first file.
ALTER TABLE certificate_pending ENABLE ROW LEVEL SECURITY;
ALTER TABLE certificate_pending FORCE ROW LEVEL SECURITY;
CREATE POLICY laboratory ON certificate_pending FOR SELECT TO emfolio_runtime USING ((SELECT app_is_laboratory()));
CREATE POLICY functions ON certificate_pending TO emfolio_owner USING (true) WITH CHECK (true);
GRANT SELECT ON certificate_pending TO emfolio_runtime;

-- The owner sees both by its policies of 0034.
INSERT INTO certificate_pending (certificate_id)
SELECT id FROM certificate c WHERE NOT EXISTS (SELECT FROM certificate_file f WHERE f.certificate_id = c.id);

CREATE FUNCTION mark_pending() RETURNS trigger
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  INSERT INTO public.certificate_pending (certificate_id) VALUES (NEW.id);
  RETURN NEW;
END $$;
CREATE FUNCTION mark_made() RETURNS trigger
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  DELETE FROM public.certificate_pending WHERE certificate_id = NEW.certificate_id;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION mark_pending(), mark_made() FROM PUBLIC;
CREATE TRIGGER mark_pending AFTER INSERT ON certificate FOR EACH ROW EXECUTE FUNCTION mark_pending();
CREATE TRIGGER mark_made AFTER INSERT ON certificate_file FOR EACH ROW EXECUTE FUNCTION mark_made();
ALTER TABLE certificate ENABLE ALWAYS TRIGGER mark_pending;
ALTER TABLE certificate_file ENABLE ALWAYS TRIGGER mark_made;

-- The middle of a serial. The operators that find it by an index (of arrays as of trigrams) are not leakproof, and behind
-- row-level security no index would be used. So one function looks, as the owner, who sees every sensor by its policy of
-- 0034; it answers the laboratory alone, and names only what the caller's own policies then show or do not.
CREATE FUNCTION serial_pieces(serial_key text) RETURNS text[]
LANGUAGE sql IMMUTABLE STRICT PARALLEL SAFE SET search_path = pg_catalog, pg_temp AS $$
  SELECT coalesce(array_agg(DISTINCT substr(serial_key, at, 3)), '{}') FROM generate_series(1, length(serial_key) - 2) AS at
$$;
CREATE INDEX sensor_serial_pieces ON sensor USING gin (serial_pieces(serial_key));

CREATE FUNCTION sensors_with_serial_part(asked_key text, most integer) RETURNS SETOF uuid
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
  SELECT s.id FROM public.sensor s
   WHERE (SELECT public.app_is_laboratory()) AND length(asked_key) >= 3
     AND public.serial_pieces(s.serial_key) @> public.serial_pieces(asked_key)
     AND position(asked_key IN s.serial_key) > 0
   LIMIT most
$$;
REVOKE ALL ON FUNCTION sensors_with_serial_part(text, integer) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION sensors_with_serial_part(text, integer) TO emfolio_runtime;
REVOKE ALL ON FUNCTION serial_pieces(text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION serial_pieces(text) TO emfolio_runtime;
