-- Who told the laboratory the time is listed with its own keys; only a document's seal is the laboratory's alone.
ALTER TABLE seal_key DROP CONSTRAINT seal_key_origin_word,
  ADD CONSTRAINT seal_key_origin_word CHECK (origin ~ '^(self-issued|file|authority)$'),
  ADD CONSTRAINT seal_key_authority_tells_the_time CHECK (origin <> 'authority' OR purpose = 'timestamp');

-- A key is retired by the platform when another one is taken up; that it is no longer to be trusted, a person says.
ALTER TABLE seal_key_ending
  ADD CONSTRAINT seal_key_ending_revoked_by_a_person CHECK (kind <> 'revoked' OR recorded_by_id IS NOT NULL);
