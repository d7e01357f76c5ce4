import { catalogue, catalogueSha256 } from "./catalogue/catalogue";
import { englishAlone, type Translation, type Wording } from "./catalogue/settle";
import type { CertificateContent } from "./content";

/** How a certificate is written: in which words and languages, and how much of it (ISO/IEC 17025:2017, 7.8.1.3). */
export type HowWritten = {
  readonly wording: Wording;
  /** Lower-case hex, of the wording's catalogue. */
  readonly catalogueSha256: string;
  readonly form:
    | { readonly kind: "full" }
    /** `agreement`: by what it was agreed; may be empty. */
    | { readonly kind: "simplified"; readonly agreement: string };
};

export const inEnglish: HowWritten = {
  wording: englishAlone,
  catalogueSha256,
  form: { kind: "full" },
};

/** As an order line asks for it. */
export const howWritten = (asks: {
  readonly language?: "en" | "en-de";
  readonly form?: "full" | "simplified";
  readonly formAgreement?: string;
}): HowWritten => ({
  wording: { catalogue, further: asks.language === "en-de" ? ["de"] : [] },
  catalogueSha256,
  form:
    asks.form === "simplified"
      ? { kind: "simplified", agreement: asks.formAgreement ?? "" }
      : { kind: "full" },
});

const textsIn = (value: unknown): readonly string[] => {
  if (typeof value === "string") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(textsIn);
};

/** Translations of what the content says, and of nothing else. */
export const onlyWhatIsSaid = (content: CertificateContent): CertificateContent => {
  const { translations, ...said } = content;
  if (!translations) return content;
  const printed = new Set(textsIn(said));
  return {
    ...said,
    translations: translations.map(({ language, texts }) => ({
      language,
      texts: Object.fromEntries(Object.entries(texts).filter(([english]) => printed.has(english))),
    })),
  };
};

/** The content with where its words come from, and its translations: those it has, and further ones. */
export const inLanguages = (
  content: CertificateContent,
  how: HowWritten,
  translations: readonly Translation[],
): CertificateContent => {
  const { wording } = how;
  return onlyWhatIsSaid({
    ...content,
    catalogue: {
      version: wording.catalogue.version,
      sha256: how.catalogueSha256,
      languages: ["en", ...wording.further],
    },
    ...(wording.further.length === 0
      ? {}
      : {
          translations: wording.further.map((language) => ({
            language,
            texts: Object.assign(
              {},
              ...[...(content.translations ?? []), ...translations].flatMap((one) =>
                one.language === language ? [one.texts] : [],
              ),
            ) as Record<string, string>,
          })),
        }),
  });
};
