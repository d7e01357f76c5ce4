import { extractText, getDocumentProxy } from "unpdf";

/** The text of each page as a reader's program gives it. */
export const pdfPages = async (bytes: Uint8Array): Promise<string[]> => {
  // The extractor takes the buffer over: it gets a copy.
  const document = await getDocumentProxy(new Uint8Array(bytes));
  const { text } = await extractText(document, { mergePages: false });
  // One glyph stands for the micro sign and the Greek mu; the extractor gives the latter.
  return text.map((page) => page.replaceAll("\u03bc", "\u00b5"));
};
