import { ok, type Result } from "../refusal";
import { catalogue, catalogueSha256 } from "./catalogue/catalogue";
import type { Draft } from "./catalogue/message";
import { settle } from "./catalogue/settle";
import type { CertificateContent } from "./content";
import { FurtherLanguage } from "./document-language";
import { inEnglish, inLanguages } from "./how-written";

/**
 * A content that was composed before, with what is said of it now, in its own languages. What it said stays word for
 * word; a content from before there was a catalogue stays one without.
 */
export const sayFurther = (
  content: CertificateContent,
  draft: Draft<Partial<CertificateContent>>,
): Result<CertificateContent> => {
  const further = (content.catalogue?.languages ?? []).flatMap((language) => {
    const known = FurtherLanguage.safeParse(language);
    return known.success ? [known.data] : [];
  });
  const wording = { catalogue, further };
  const settled = settle<Partial<CertificateContent>>(draft, wording);
  if (!settled.ok) return settled;
  const { value, translations } = settled.value;
  const said = { ...content, ...value };
  return ok(
    content.catalogue ? inLanguages(said, { ...inEnglish, wording, catalogueSha256 }, translations) : said,
  );
};
