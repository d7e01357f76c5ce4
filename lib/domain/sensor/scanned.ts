import { hiddenCharacterIn, hiddenCharacterMessage } from "../hidden-character";

export type Scanned =
  | { readonly kind: "nothing" }
  | { readonly kind: "tag"; readonly tag: string }
  | { readonly kind: "serial"; readonly serial: string }
  | { readonly kind: "refused"; readonly message: string };

/**
 * A tag alone, or at the end of a label's address. A scanner that types as a keyboard of another country writes another
 * sign for the hyphen: whatever stands there, six digits after a T are a tag.
 */
const tagPattern = /(?:^|\W)T\W?(\d{6})\/?$/i;

/** What came from the scanner, the camera or the keyboard: the laboratory's tag, or else the maker's serial. */
export const scanned = (typed: string): Scanned => {
  const named = hiddenCharacterIn(typed);
  if (named) return { kind: "refused", message: hiddenCharacterMessage(named) };
  const text = typed.replace(/\s+/g, " ").trim();
  if (text === "") return { kind: "nothing" };
  if (text.length > 300) return { kind: "refused", message: "This is longer than any label or serial." };
  const digits = tagPattern.exec(text)?.[1];
  return digits ? { kind: "tag", tag: `T-${digits}` } : { kind: "serial", serial: text };
};
