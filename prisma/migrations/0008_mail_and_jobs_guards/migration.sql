-- Mail and reminders: privileges, append-only evidence, row-level security, words. And the one door to the job queue.

GRANT SELECT, INSERT ON mail_message, mail_attempt, reminder TO emfolio_runtime;
GRANT USAGE ON SEQUENCE mail_attempt_id_seq, reminder_id_seq TO emfolio_runtime;

DO $$
DECLARE
  relation text;
BEGIN
  FOREACH relation IN ARRAY ARRAY['mail_message', 'mail_attempt', 'reminder'] LOOP
    EXECUTE format('CREATE TRIGGER refuse_change BEFORE UPDATE OR DELETE ON %I FOR EACH ROW EXECUTE FUNCTION refuse_change()', relation);
    EXECUTE format('CREATE TRIGGER refuse_truncate BEFORE TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', relation);
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER refuse_change', relation);
    EXECUTE format('ALTER TABLE %I ENABLE ALWAYS TRIGGER refuse_truncate', relation);
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', relation);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', relation);
    EXECUTE format('CREATE POLICY laboratory ON %I TO emfolio_runtime
                    USING ((SELECT app_is_laboratory())) WITH CHECK ((SELECT app_is_laboratory()))', relation);
  END LOOP;
END $$;

ALTER TABLE mail_message
  ADD CONSTRAINT mail_message_kind_word CHECK (kind ~ '^(due-digest)$'),
  ADD FOREIGN KEY (person_id) REFERENCES person (id),
  ADD CHECK (body <> ''),
  -- What stands in a header stands on one line: a line break would begin a header of somebody else's.
  ADD CONSTRAINT mail_message_recipient_form CHECK (recipient ~ '^[^[:space:][:cntrl:],;<>]+@[^[:space:][:cntrl:],;<>]+$'),
  ADD CONSTRAINT mail_message_subject_form CHECK (subject ~ '^[^[:cntrl:]]+$'),
  ADD CONSTRAINT mail_message_message_id_form CHECK (message_id ~ '^<[^[:space:][:cntrl:]<>@]+@[^[:space:][:cntrl:]<>@]+>$');
ALTER TABLE mail_attempt
  ADD CONSTRAINT mail_attempt_outcome_word CHECK (outcome ~ '^(sent|failed|given-up)$'),
  ADD CONSTRAINT mail_attempt_transport_word CHECK (transport ~ '^(smtp|file)$'),
  ADD CHECK (detail <> '');
-- It is sent once at most, as far as this database knows.
CREATE UNIQUE INDEX mail_attempt_one_sent ON mail_attempt (mail_message_id) WHERE outcome = 'sent';
ALTER TABLE reminder
  ADD CONSTRAINT reminder_due_kind_word CHECK (due_kind ~ '^(calibration|intermediate-check|maintenance|characterisation)$'),
  ADD CONSTRAINT reminder_stage_word CHECK (stage ~ '^(due|out-of-date)$');

-- ── The job queue ──────────────────────────────────────────────────────────────────────────────────────────────────
-- Its tables (schema graphile_worker) are the queue's own, made at start as emfolio_jobs. The product may put a job in,
-- in its own transaction, and nothing else.

GRANT EXECUTE ON FUNCTION app_is_laboratory() TO emfolio_jobs;

SET ROLE emfolio_jobs;
CREATE SCHEMA jobs;
GRANT USAGE ON SCHEMA jobs TO emfolio_runtime;

-- A job with the same key that has not begun yet is replaced; one that is being done is followed by this one.
CREATE FUNCTION jobs.enqueue(task text, job_key text, payload text) RETURNS void
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
BEGIN
  IF NOT public.app_is_laboratory() THEN
    RAISE EXCEPTION 'jobs are given by the laboratory' USING ERRCODE = 'insufficient_privilege';
  END IF;
  PERFORM graphile_worker.add_job(task, payload => enqueue.payload::json, job_key => enqueue.job_key);
END $$;

REVOKE ALL ON FUNCTION jobs.enqueue(text, text, text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION jobs.enqueue(text, text, text) TO emfolio_runtime;
