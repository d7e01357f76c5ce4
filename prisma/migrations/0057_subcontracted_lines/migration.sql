-- The few lines that an external provider does, so that lists of their sensors need not walk all lines.
CREATE INDEX order_line_subcontracted ON order_line (id) WHERE provider_id IS NOT NULL;
