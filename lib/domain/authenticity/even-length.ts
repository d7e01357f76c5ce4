import { PublicStatus } from "./public-status";
import type { StatusWords } from "./status-words";

/**
 * What goes over the wire has one length for every state, so that whoever only sees its size learns nothing. Told in
 * two places: once as data for the page's script, once as words for whoever has none.
 */
const packedBytes = 1536;
const wordsBytes = 2048;

const byteLength = (text: string): number => new TextEncoder().encode(text).length;

/** Base64 of the status, filled up with blanks; a status that does not fit in is told nevertheless. */
export const packStatus = (status: PublicStatus): string => {
  const text = JSON.stringify(status);
  const bytes = new TextEncoder().encode(text + " ".repeat(Math.max(0, packedBytes - byteLength(text))));
  return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
};

export const unpackStatus = (packed: string): PublicStatus => {
  const bytes = Uint8Array.from(atob(packed), (sign) => sign.charCodeAt(0));
  return PublicStatus.parse(JSON.parse(new TextDecoder().decode(bytes)));
};

/** As long as the markup makes it: five signs are written out as entities. */
const written = (text: string): number =>
  byteLength(
    text.replace(/&/g, "&amp;").replace(/[<>]/g, "&lt;").replace(/"/g, "&quot;").replace(/'/g, "&#x27;"),
  );

/** What is left to fill beside these words, which stand in a tree that never changes. */
export const fillBeside = (standing: string, { word, sentence, rows }: StatusWords): string => {
  const texts = [standing, word, sentence, ...rows.map(({ value }) => value)];
  const links = rows.flatMap(({ href }) => (href === undefined ? [] : [` href="${href}"`]));
  const spent =
    texts.reduce((sum, text) => sum + written(text), 0) +
    links.reduce((sum, text) => sum + written(text) - 2 * ("&quot;".length - 1), 0);
  return ".".repeat(Math.max(0, wordsBytes - spent));
};
