import { ok, type Result, type refuse } from "../../refusal";
import type { DocumentLanguage, FurtherLanguage } from "../document-language";
import { type Catalogue, catalogue, labelKeys, type TextKey } from "./catalogue";
import { type Draft, isMessage, type Message, type Said } from "./message";

/** In what words a certificate is written: English, and beside it the languages asked for. */
export type Wording = {
  readonly catalogue: Catalogue;
  readonly further: readonly FurtherLanguage[];
};

export const englishAlone: Wording = { catalogue, further: [] };

/** English sentence → the same in another language. */
export type Translation = { readonly language: FurtherLanguage; readonly texts: Record<string, string> };

type Missing = Set<string>;

const fill = (template: string, place: (name: string) => string): string =>
  template.replace(/\{([a-z]+)\}/g, (_, name: string) => place(name));

/** One message in one language. What is missing is noted and stands empty: nothing falls back to English. */
const write = (message: Said, language: DocumentLanguage, from: Catalogue, missing: Missing): string => {
  if (typeof message === "string") return message;
  if ("sayAll" in message)
    return message.sayAll.map((one) => write(one, language, from, missing)).join(message.between);
  const template = from.texts[message.say]?.[language];
  if (!template) {
    missing.add(`${message.say} (${language})`);
    return "";
  }
  return fill(template, (name) => {
    const place = message.with?.[name];
    if (place === undefined) throw new Error(`the text ${message.say} has a place ${name} that is not given`);
    return write(place, language, from, missing);
  });
};

const lackingLabels = ({ catalogue: from, further }: Wording): string[] =>
  further.flatMap((language) =>
    labelKeys.flatMap((key: TextKey) => (from.texts[key]?.[language] ? [] : [`${key} (${language})`])),
  );

const mapLeaves = (value: unknown, leaf: (message: Message) => string): unknown => {
  if (Array.isArray(value)) return value.map((one) => mapLeaves(one, leaf));
  if (typeof value !== "object" || value === null) return value;
  if (isMessage(value)) return leaf(value);
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, one]) => (one === undefined ? [] : [[key, mapLeaves(one, leaf)]])),
  );
};

const lacking = (message: string): ReturnType<typeof refuse> => ({
  ok: false,
  refusal: {
    code: "rule",
    message,
    fields: { language: "The text catalogue lacks a text in this language." },
    grounds: { language: "certificate-text-missing" },
  },
});

/**
 * The structure with its English sentences, and beside it their translations. A text that the catalogue lacks in a
 * language asked for stops it: the refusal names the key.
 */
export const settle = <T>(
  draft: Draft<T>,
  wording: Wording = englishAlone,
): Result<{ readonly value: T; readonly translations: readonly Translation[] }> => {
  const missing: Missing = new Set(lackingLabels(wording));
  const translations = wording.further.map((language) => ({ language, texts: {} as Record<string, string> }));
  const value = mapLeaves(draft, (message) => {
    const english = write(message, "en", wording.catalogue, missing);
    for (const { language, texts } of translations)
      texts[english] = write(message, language, wording.catalogue, missing);
    return english;
  }) as T;
  if (missing.size > 0)
    return lacking(
      `The certificate cannot be issued in the languages asked for: the text catalogue (version ${wording.catalogue.version}) lacks ${[...missing].toSorted().join(", ")}. Add the text, or order the certificate in English alone.`,
    );
  return ok({ value, translations });
};

/** A message in English, for the screens. */
export const english = (message: Said): string => {
  const missing: Missing = new Set();
  const text = write(message, "en", catalogue, missing);
  if (missing.size > 0) throw new Error(`the catalogue lacks ${[...missing].join(", ")}`);
  return text;
};
