-- A certificate of a lot names several sensors: none of them on hold.
CREATE TRIGGER refuse_held BEFORE INSERT ON certificate_part FOR EACH ROW EXECUTE FUNCTION refuse_held();
ALTER TABLE certificate_part ENABLE ALWAYS TRIGGER refuse_held;
