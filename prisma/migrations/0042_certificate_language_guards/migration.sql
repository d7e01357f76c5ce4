-- What a content names it has: each language beside the leading one with its translations, a simplified form with the
-- agreement it rests on. Contents from before either could be asked for name neither.
CREATE FUNCTION guard_certificate_words() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
  content jsonb := NEW.content::jsonb;
  lacking text;
BEGIN
  IF content ->> 'form' = 'simplified' AND coalesce(content ->> 'formStatement', '') = '' THEN
    RAISE EXCEPTION 'a simplified certificate cites the agreement it rests on' USING ERRCODE = 'check_violation';
  END IF;
  SELECT named.language INTO lacking
    FROM jsonb_array_elements_text(coalesce(content #> '{catalogue,languages}', '[]'))
      WITH ORDINALITY AS named (language, place)
    WHERE named.place > 1 AND NOT EXISTS (
      SELECT FROM jsonb_array_elements(coalesce(content -> 'translations', '[]')) AS one
      WHERE one ->> 'language' = named.language AND coalesce(one -> 'texts', '{}') <> '{}')
    LIMIT 1;
  IF lacking IS NOT NULL THEN
    RAISE EXCEPTION 'this content names the language % and has no texts in it', lacking
      USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
REVOKE ALL ON FUNCTION guard_certificate_words() FROM PUBLIC;
CREATE TRIGGER guard_certificate_words AFTER INSERT ON certificate FOR EACH ROW EXECUTE FUNCTION guard_certificate_words();
ALTER TABLE certificate ENABLE ALWAYS TRIGGER guard_certificate_words;
