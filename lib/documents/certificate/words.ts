import { type LabelKey, label } from "@/lib/domain/certificate/catalogue/catalogue";
import type { CertificateContent } from "@/lib/domain/certificate/content";

/** One thing in each language of the document, the leading one first. */
export type Said = readonly [string, ...string[]];

/** What stands in the places of a caption. */
export type Places = Readonly<Record<string, string>>;

export type Words = {
  /** The leading one: it binds, and decides how figures are written. */
  readonly language: string;
  readonly isBilingual: boolean;
  readonly caption: (key: LabelKey, places?: Places) => Said;
  /** A sentence of the content, with its translation where it has one. A name or a figure stands as it is. */
  readonly sentence: (text: string) => Said;
};

/** On one line, for what cannot stand below each other. */
export const inLine = (said: Said): string => said.join(" / ");

/** Several things in one line, language by language; what is the same in each stands once. */
export const together = (glue: string, ...parts: readonly Said[]): Said => {
  const count = Math.max(1, ...parts.map((part) => part.length));
  const lines = Array.from({ length: count }, (_, at) => parts.map((part) => part[at] ?? part[0]).join(glue));
  return [...new Set(lines)] as unknown as Said;
};

/** Within a line, and not at its beginning. */
export const lowered = (said: Said): Said => {
  const [leading, ...further] = said.map((text) => text.replace(/^./u, (letter) => letter.toLowerCase()));
  return [leading ?? "", ...further];
};

const filled = (text: string, places: Places): string =>
  text.replaceAll(/\{(\w+)\}/g, (whole, name: string) => places[name] ?? whole);

const each = (first: string, rest: readonly string[]): Said =>
  [...new Set([first, ...rest])] as unknown as Said;

/**
 * The words of the content's own languages. Captions come from the catalogue, sentences from the content, which carries
 * their translations: a sentence without one is a name, a figure, or what a person wrote, and stands once, as it is.
 */
export const wordsOf = ({ catalogue, translations = [] }: CertificateContent): Words => {
  const [leading = "en", ...further] = catalogue?.languages ?? [];
  const textsIn = new Map(translations.map(({ language, texts }) => [language as string, texts]));
  return {
    language: leading,
    isBilingual: further.length > 0,
    caption: (key, places = {}) => {
      const inLanguage = (language: typeof leading): string => filled(label(key, language), places);
      return each(inLanguage(leading), further.map(inLanguage));
    },
    sentence: (text) =>
      each(
        textsIn.get(leading)?.[text] ?? text,
        further.map((language) => (language === "en" ? text : (textsIn.get(language)?.[text] ?? text))),
      ),
  };
};
