import { ok, type Result, refuse } from "../../refusal";
import type { CertificateContent } from "../content";
import { contentTexts } from "./content-texts";
import { placeInWords } from "./place-in-words";
import { shownCharacter, unprintableIn, writeInstead } from "./unprintable";

type Found = { readonly path: string; readonly character: string };

/** Each character that the document has no glyph for, and where it stands. */
const unprintableOf = (content: CertificateContent): readonly Found[] => {
  // Translations repeat what is said elsewhere: the place where somebody typed it comes first.
  const { translations, ...said } = content;
  return [...contentTexts(said), ...contentTexts({ translations })].flatMap(([path, text]) =>
    unprintableIn(text).map((character) => ({ path, character })),
  );
};

/**
 * Before anybody signs: a document whose characters are not all there could never be made, and its number would stand
 * for nothing (7.8.1.2; ISO 19005-3:2012, 6.2.11.4). Told with place, character and remedy.
 */
export const decidePrintable = (content: CertificateContent): Result<CertificateContent> => {
  const found = unprintableOf(content);
  const [first] = found;
  if (!first) return ok(content);
  const { words, remedy } = placeInWords(first.path);
  const more = new Set(found.map(({ character }) => character)).size - 1;
  const further = more > 0 ? ` ${more} more ${more === 1 ? "character" : "characters"} like it` : "";
  return refuse(
    "rule",
    `The certificate of ${content.item.tag} cannot be printed: its font has no ${shownCharacter(first.character)}, which stands in ${words}. ${writeInstead(first.character)} ${remedy}${further && ` It has${further}.`}`,
  );
};
