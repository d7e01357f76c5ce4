-- What the public may know of a certificate: whoever shows its token, and nobody else, asks this one function. It answers
-- one row, of the same shape and by the same path, whether the token is known or not.

-- What the function touches, its owner may see.
CREATE POLICY functions ON certificate FOR SELECT TO emfolio_owner USING (true);
CREATE POLICY functions ON certificate_file FOR SELECT TO emfolio_owner USING (true);
CREATE POLICY functions ON certificate_ending FOR SELECT TO emfolio_owner USING (true);
CREATE POLICY functions ON sensor FOR SELECT TO emfolio_owner USING (true);
CREATE POLICY functions ON laboratory FOR SELECT TO emfolio_owner USING (true);

-- Never the content hash itself, which stands on the paper alone: content_proof is SHA-256 over "TOKEN#HASH", the end of
-- the address in the code of each page, so that whoever holds the paper can compare and nobody else learns it. Of the
-- serial only its last three characters, and none of a short one. Never a reason, a customer or a result.
CREATE FUNCTION authenticity(asked_token text) RETURNS TABLE (
  standing text, laboratory text, number text, issued_on text, serial_end text, ended_on text,
  successor_number text, successor_token text, predecessor_number text, predecessor_token text,
  file_sha256 text, content_proof text
)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
  SELECT
    CASE WHEN c.id IS NULL THEN 'unknown'
         WHEN e.kind IS NOT NULL THEN e.kind
         WHEN f.sha256 IS NULL THEN 'pending'
         ELSE 'valid' END,
    coalesce(l.name, ''), coalesce(c.number, ''),
    coalesce(to_char(c.signed_at AT TIME ZONE 'UTC', 'YYYY-MM-DD'), ''),
    CASE WHEN length(s.serial) > 5 THEN right(s.serial, 3) ELSE '' END,
    coalesce(to_char(e.decided_at AT TIME ZONE 'UTC', 'YYYY-MM-DD'), ''),
    coalesce(n.number, ''), coalesce(n.token, ''), coalesce(p.number, ''), coalesce(p.token, ''),
    coalesce(encode(f.sha256, 'hex'), ''),
    coalesce(encode(sha256(convert_to(c.token || '#' || encode(c.content_hash, 'hex'), 'UTF8')), 'hex'), '')
  FROM (VALUES (asked_token)) AS asked (token)
  LEFT JOIN public.certificate c ON c.token = asked.token
  LEFT JOIN public.laboratory l ON l.id = 'laboratory'
  LEFT JOIN public.sensor s ON s.id = c.sensor_id
  LEFT JOIN public.certificate_file f ON f.certificate_id = c.id AND f.media_type = 'application/pdf'
  LEFT JOIN public.certificate_ending e ON e.certificate_id = c.id
  LEFT JOIN public.certificate n ON n.id = e.successor_id
  LEFT JOIN public.certificate_ending b ON b.successor_id = c.id
  LEFT JOIN public.certificate p ON p.id = b.certificate_id
$$;

REVOKE ALL ON FUNCTION authenticity(text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION authenticity(text) TO emfolio_runtime;
