-- That of a roll one end alone is reported, as its customer agreed: kept as it was recorded, once for each roll of an order.

GRANT SELECT, INSERT ON roll_agreement TO emfolio_runtime;
CREATE TRIGGER refuse_change BEFORE UPDATE OR DELETE ON roll_agreement FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER refuse_truncate BEFORE TRUNCATE ON roll_agreement FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
ALTER TABLE roll_agreement ENABLE ALWAYS TRIGGER refuse_change;
ALTER TABLE roll_agreement ENABLE ALWAYS TRIGGER refuse_truncate;
ALTER TABLE roll_agreement ENABLE ROW LEVEL SECURITY;
ALTER TABLE roll_agreement FORCE ROW LEVEL SECURITY;
CREATE POLICY laboratory ON roll_agreement TO emfolio_runtime
  USING ((SELECT app_is_laboratory())) WITH CHECK ((SELECT app_is_laboratory()));
CREATE POLICY customer ON roll_agreement FOR SELECT TO emfolio_runtime USING (customer_id = (SELECT app_customer_id()));

ALTER TABLE roll_agreement
  ADD CHECK (lot <> ''), ADD CHECK (roll <> ''), ADD CHECK (agreed_with <> ''), ADD CHECK (text <> ''),
  ADD FOREIGN KEY (order_id, customer_id) REFERENCES customer_order (id, customer_id),
  ADD FOREIGN KEY (recorded_by_id) REFERENCES person (id);
