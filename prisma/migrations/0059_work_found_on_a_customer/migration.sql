-- What was found may concern a customer as a whole: an address, an agreement, what was told.
ALTER TABLE nonconformity DROP CONSTRAINT nonconformity_subject_kind_word;
ALTER TABLE nonconformity ADD CONSTRAINT nonconformity_subject_kind_word
  CHECK (subject_kind ~ '^(sensor|run|order|certificate|customer|equipment|calibration|laboratory)$');
