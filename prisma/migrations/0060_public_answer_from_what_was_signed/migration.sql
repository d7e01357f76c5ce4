-- Whose certificate it is and whose serial it carries are told from what was signed. The rows of sensor and laboratory
-- change: a corrected serial stands on the amendment alone, and a laboratory that is renamed issued nothing anew. Of a
-- token that nothing has, the laboratory that answers is told, by the same path.
CREATE OR REPLACE FUNCTION authenticity(asked_token text) RETURNS TABLE (
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
    coalesce(s.laboratory, l.name, ''), coalesce(c.number, ''),
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
  -- Read once. Of several items, the certificate's own is the one it is filed under.
  CROSS JOIN LATERAL (SELECT coalesce(c.content, '{}')::jsonb AS content OFFSET 0) AS signed
  CROSS JOIN LATERAL (
    SELECT signed.content #>> '{laboratory,name}' AS laboratory, signed.content #>> '{item,serial}' AS serial OFFSET 0
  ) AS s
  LEFT JOIN public.certificate_file f ON f.certificate_id = c.id AND f.media_type = 'application/pdf'
  LEFT JOIN public.certificate_ending e ON e.certificate_id = c.id
  LEFT JOIN public.certificate n ON n.id = e.successor_id
  LEFT JOIN public.certificate_ending b ON b.successor_id = c.id
  LEFT JOIN public.certificate p ON p.id = b.certificate_id
  LEFT JOIN public.audit_event a ON a.sequence = c.log_sequence
$$;
