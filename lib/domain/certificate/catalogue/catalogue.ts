import { canonical } from "../../audit/canonical";
import type { DocumentLanguage, FurtherLanguage } from "../document-language";
import conformity from "./conformity.json";
import fitted from "./function.json";
import item from "./item-and-history.json";
import labels from "./labels.json";
import method from "./method-and-conditions.json";
import statements from "./statements.json";
import uncertainty from "./uncertainty.json";

const texts = { ...method, ...item, ...statements, ...conformity, ...uncertainty, ...fitted, ...labels };

export type TextKey = keyof typeof texts;
type LabelOf<Key> = Key extends `label.${infer Name}` ? Name : never;
export type LabelKey = LabelOf<TextKey>;

/** One text in each language; English always, a further one unless it is missing. Places in it: "{name}". */
export type CatalogueText = { readonly en: string } & { readonly [language in FurtherLanguage]?: string };

/**
 * Every sentence and label of a certificate, as data. A third language is one more column here and one more word in
 * `FurtherLanguage`. A sentence stands in its content and may be reworded: raise the version, and the hash
 * with it. A label is printed anew with each rendering: once printed it keeps its text, and another wording is another key.
 */
export type Catalogue = {
  readonly version: string;
  readonly texts: Readonly<Record<TextKey, CatalogueText>>;
};

export const catalogue: Catalogue = { version: "1", texts };

/** What the catalogue's hash is over: RFC 8785. */
export const canonicalCatalogue = (of: Catalogue): string => canonical(of);

/** SHA-256 of the canonical form; a test holds the two together. */
export const catalogueSha256 = "72084afd6b025d64f75df36844cd2170b832bb8845747ba928d32f8ff695b556";

/** A caption, column head or word of the document. Contents without a catalogue print the English. */
export const label = (
  key: LabelKey,
  language: DocumentLanguage = "en",
  of: Catalogue = catalogue,
): string => {
  const text = of.texts[`label.${key}`][language];
  // No certificate is issued that lacks one (`settle`), so this is a defect and not a case.
  if (text === undefined) throw new Error(`the catalogue has no label ${key} in ${language}`);
  return text;
};

export const labelKeys = Object.keys(labels) as readonly (keyof typeof labels)[];
