-- The checkpoint of the audit log that a certificate carries (decision 0038): where the log stood when it was
-- signed. It travels with the file, so that a log rewritten afterwards, chain and head and all, is found from outside.

-- Made by the database from what was signed, so that it cannot say anything else. The content is canonical JSON (RFC 8785):
-- its keys are in order, without blanks, and within a text every quote is escaped, so that no text can look like this.
ALTER TABLE certificate
  ADD COLUMN log_sequence bigint GENERATED ALWAYS AS
    (substring(content FROM '"log":\{"hash":"[0-9a-f]{64}","sequence":([0-9]{1,16})\}')::bigint) STORED,
  ADD COLUMN log_hash text GENERATED ALWAYS AS
    (substring(content FROM '"log":\{"hash":"([0-9a-f]{64})","sequence":[0-9]{1,16}\}')) STORED;

-- What the function touches, its owner may see: to append, it never had to.
CREATE POLICY functions_read ON audit_event FOR SELECT TO emfolio_owner USING (true);

-- As before, and beside it the hash that the log has today at the place of the certificate's own checkpoint, empty where
-- the log ends before it, the certificate carries none, or nothing is known. Never of a place that somebody asks for.
DROP FUNCTION authenticity(text);
CREATE FUNCTION authenticity(asked_token text) RETURNS TABLE (
  standing text, laboratory text, number text, issued_on text, serial_end text, ended_on text,
  successor_number text, successor_token text, predecessor_number text, predecessor_token text,
  file_sha256 text, content_proof text, log_hash text
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
    coalesce(encode(sha256(convert_to(c.token || '#' || encode(c.content_hash, 'hex'), 'UTF8')), 'hex'), ''),
    coalesce(encode(a.hash, 'hex'), '')
  FROM (VALUES (asked_token)) AS asked (token)
  LEFT JOIN public.certificate c ON c.token = asked.token
  LEFT JOIN public.laboratory l ON l.id = 'laboratory'
  LEFT JOIN public.sensor s ON s.id = c.sensor_id
  LEFT JOIN public.certificate_file f ON f.certificate_id = c.id AND f.media_type = 'application/pdf'
  LEFT JOIN public.certificate_ending e ON e.certificate_id = c.id
  LEFT JOIN public.certificate n ON n.id = e.successor_id
  LEFT JOIN public.certificate_ending b ON b.successor_id = c.id
  LEFT JOIN public.certificate p ON p.id = b.certificate_id
  LEFT JOIN public.audit_event a ON a.sequence = c.log_sequence
$$;

REVOKE ALL ON FUNCTION authenticity(text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION authenticity(text) TO emfolio_runtime;
