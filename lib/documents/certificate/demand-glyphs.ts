import { Font } from "@react-pdf/renderer";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { contentTexts } from "@/lib/domain/certificate/printable/content-texts";
import { documentFont } from "../fonts";
import { alone } from "../render-alone";

type GlyphFont = { readonly hasGlyphForCodePoint: (codePoint: number) => boolean };

/** The fonts as the renderer itself will use them. */
const readFonts = async (): Promise<readonly GlyphFont[]> => {
  const fontFamily = documentFont();
  const weights = [400, 600] as const;
  await Promise.all(weights.map((fontWeight) => Font.load({ fontFamily, fontWeight })));
  return weights.map((fontWeight) => {
    const data = Font.getFont({ fontFamily, fontWeight }).data as GlyphFont | null;
    if (!data) throw new Error(`The font ${fontFamily} ${fontWeight} is not there`);
    return data;
  });
};

/** While no document is being set: each begins by putting the fonts away. */
const loadFonts = (): Promise<readonly GlyphFont[]> => alone(readFonts);

const isBreak = (character: string): boolean => character === "\n";

/**
 * Each character that the document would print without a glyph, and where it stands. The renderer puts another font, not
 * embedded, or an empty box in its place: neither may reach a certificate (ISO 19005-3:2012, 6.2.11.4; 7.8.1.2).
 */
export const missingGlyphs = async (
  content: CertificateContent,
): Promise<readonly { readonly path: string; readonly character: string }[]> => {
  const fonts = await loadFonts();
  const lacks = (character: string): boolean =>
    !isBreak(character) &&
    fonts.some((font) => !font.hasGlyphForCodePoint(character.codePointAt(0) as number));
  return [...contentTexts(content)].flatMap(([path, text]) =>
    [...new Set(text)].filter(lacks).map((character) => ({ path, character })),
  );
};

/** The last defence: `decidePrintable` refused it before anybody signed. */
export const demandGlyphs = async (content: CertificateContent): Promise<void> => {
  const [first] = await missingGlyphs(content);
  if (first === undefined) return;
  const point = (first.character.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, "0");
  throw new Error(
    `The document's font has no glyph for "${first.character}" (U+${point}) in ${first.path}: nothing is printed without it. Write this text in Latin, Greek or Cyrillic letters`,
  );
};
