-- A frozen chain stays what it was, and no circle can be written into it.
--
-- trace_node and trace_edge refuse UPDATE, DELETE and TRUNCATE (0006). That alone would still let a later edge be hung
-- on an old node, and so alter a chain that was issued. Hence: the edges of a node are written in the transaction that
-- froze the node, or never. And every edge leads to a node of smaller height; heights are whole numbers, so no way
-- along edges comes back to where it began.

ALTER TABLE trace_node ADD CHECK (height >= 0), ADD CHECK (record_id <> '');

CREATE FUNCTION guard_trace_edge() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  -- As stored in xmin: the low 32 bits of the number of the transaction.
  mine bigint := pg_current_xact_id()::text::bigint & 4294967295;
BEGIN
  -- Asked for what is right, so that a node that cannot be seen is refused too.
  IF EXISTS (
    SELECT FROM fresh WHERE NOT EXISTS (
      SELECT FROM public.trace_node upper, public.trace_node lower
      WHERE upper.id = fresh.from_id AND lower.id = fresh.to_id AND lower.height < upper.height)
  ) THEN
    RAISE EXCEPTION 'trace_edge: a step of the chain leads to something nearer its end' USING ERRCODE = 'check_violation';
  END IF;
  IF EXISTS (
    SELECT FROM fresh WHERE NOT EXISTS (
      SELECT FROM public.trace_node upper WHERE upper.id = fresh.from_id AND upper.xmin::text::bigint = mine)
  ) THEN
    RAISE EXCEPTION 'trace_edge: what it stands on was frozen with it, and nothing is added afterwards'
      USING ERRCODE = 'insufficient_privilege';
  END IF;
  RETURN NULL;
END $$;
REVOKE ALL ON FUNCTION guard_trace_edge() FROM PUBLIC;

CREATE TRIGGER guard_trace_edge AFTER INSERT ON trace_edge
  REFERENCING NEW TABLE AS fresh FOR EACH STATEMENT EXECUTE FUNCTION guard_trace_edge();
ALTER TABLE trace_edge ENABLE ALWAYS TRIGGER guard_trace_edge;
