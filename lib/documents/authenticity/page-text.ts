import { decodePDFRawStream, PDFArray, PDFDict, PDFName, type PDFPage, PDFRawStream } from "pdf-lib";

/** From the codes of a font to what they mean: a ToUnicode map, ISO 32000-1, 9.10.3. */
type Meanings = ReadonlyMap<number, string>;

const latin1 = (bytes: Uint8Array): string => new TextDecoder("latin1").decode(bytes);

/**
 * The letters of a page as a reader would copy them, without any white space: enough to find a long word again, however
 * it was broken into lines. Fonts of two-byte codes, which is how our documents are written; other text is passed over.
 */
export const pageText = (page: PDFPage): string => {
  const fonts = fontsOf(page);
  const content = contentsOf(page).map((stream) => latin1(decodePDFRawStream(stream).decode()));
  let meanings: Meanings = new Map();
  let text = "";
  for (const [, font, shown] of content
    .join("\n")
    .matchAll(/\/(\S+)\s+[\d.]+\s+Tf|(\[[^\]]*\]\s*TJ|<[0-9a-fA-F\s]*>\s*Tj)/g)) {
    if (font !== undefined) meanings = fonts.get(font) ?? new Map();
    if (shown !== undefined) text += read(shown, meanings);
  }
  return text.replace(/\s/g, "");
};

function read(shown: string, meanings: Meanings): string {
  const codes = [...shown.matchAll(/<([0-9a-fA-F\s]*)>/g)].flatMap(
    ([, digits = ""]) => digits.replace(/\s/g, "").match(/.{4}/g) ?? [],
  );
  return codes.map((code) => meanings.get(Number.parseInt(code, 16)) ?? "").join("");
}

function contentsOf(page: PDFPage): readonly PDFRawStream[] {
  const contents = page.node.Contents();
  const all = contents instanceof PDFArray ? contents.asArray() : contents ? [contents] : [];
  return all.flatMap((one) => {
    const stream = page.doc.context.lookup(one);
    return stream instanceof PDFRawStream ? [stream] : [];
  });
}

function fontsOf(page: PDFPage): ReadonlyMap<string, Meanings> {
  const fonts = page.node.Resources()?.lookupMaybe(PDFName.of("Font"), PDFDict);
  const named = (fonts?.keys() ?? []).flatMap((name): [string, Meanings][] => {
    const font = fonts?.lookup(name);
    const map = font instanceof PDFDict ? font.lookup(PDFName.of("ToUnicode")) : undefined;
    const known =
      map instanceof PDFRawStream ? meaningsOf(latin1(decodePDFRawStream(map).decode())) : undefined;
    return known ? [[name.decodeText(), known]] : [];
  });
  return new Map(named);
}

function meaningsOf(map: string): Meanings {
  const found = new Map<number, string>();
  for (const [, body = ""] of map.matchAll(/beginbfchar(.*?)endbfchar/gs))
    for (const [, code = "", meaning = ""] of body.matchAll(/<([^>]*)>\s*<([^>]*)>/g))
      found.set(Number.parseInt(code, 16), utf16(meaning));
  // Only ranges that list each meaning: those that count on from one are not ours.
  for (const [, body = ""] of map.matchAll(/beginbfrange(.*?)endbfrange/gs))
    for (const [, low = "", list = ""] of body.matchAll(/<([^>]*)>\s*<[^>]*>\s*\[([^\]]*)\]/g))
      for (const [at, [, meaning = ""]] of [...list.matchAll(/<([^>]*)>/g)].entries())
        found.set(Number.parseInt(low, 16) + at, utf16(meaning));
  return found;
}

const utf16 = (digits: string): string =>
  (digits.replace(/\s/g, "").match(/.{4}/g) ?? [])
    .map((unit) => String.fromCharCode(Number.parseInt(unit, 16)))
    .join("");
