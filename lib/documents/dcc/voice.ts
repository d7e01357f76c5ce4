import type { CertificateContent } from "@/lib/domain/certificate/content";
import type { DocumentLanguage } from "@/lib/domain/certificate/document-language";
import { type Word, words } from "./words";
import { element, elementOf, type Xml } from "./xml";

/** Says a sentence of the content in one language; in English, and where nobody translated it, as it stands. */
export type Say = (sentence: string) => string;

/** The languages a certificate speaks, and how each of its sentences is said in them. */
export type Voice = {
  readonly languages: readonly DocumentLanguage[];
  readonly say: (language: DocumentLanguage) => Say;
  /** A sentence in every language. What has no translation, a name or what somebody typed, speaks for all and bears no language. */
  readonly contents: (sentence: string) => readonly Xml[];
};

const inLanguage = (language: DocumentLanguage, text: string): Xml =>
  element("dcc:content", text.trim(), { lang: language });

/** Names, numbers, addresses: the same in every language. */
export const unspoken = (text: string): Xml => element("dcc:content", text.trim());

export const voiceOf = ({ catalogue, translations = [] }: CertificateContent): Voice => {
  const languages = catalogue?.languages ?? ["en"];
  const texts = new Map(translations.map((one) => [one.language as DocumentLanguage, one.texts]));
  const known = (language: DocumentLanguage, sentence: string): string | undefined =>
    language === "en" ? sentence : texts.get(language)?.[sentence];
  return {
    languages,
    say: (language) => (sentence) => known(language, sentence) ?? sentence,
    contents: (sentence) => {
      const said = languages.map((language) => known(language, sentence));
      return said.some((text) => text === undefined)
        ? [unspoken(sentence)]
        : languages.map((language, at) => inLanguage(language, said[at] ?? sentence));
    },
  };
};

/** Words of our own, in every language of the certificate. */
export const caption = ({ languages }: Voice, word: Word): readonly Xml[] =>
  languages.map((language) => inLanguage(language, words[word][language]));

/** A text put together anew in each language. */
export const composed = (
  voice: Voice,
  compose: (say: Say, word: (word: Word) => string, language: DocumentLanguage) => string,
): readonly Xml[] =>
  voice.languages.map((language) =>
    inLanguage(
      language,
      compose(voice.say(language), (word) => words[word][language], language),
    ),
  );

export const nameOf = (inside: readonly Xml[]): Xml => element("dcc:name", inside);

/** Sentences one after another under one element; null where there are none. */
export const rich = (name: string, sentences: readonly (readonly Xml[])[]): Xml | null =>
  elementOf(name, sentences.flat());
