import { coveredCodePoints } from "./covered-code-points";

const isCovered = (codePoint: number): boolean =>
  coveredCodePoints.some(([first, last]) => codePoint >= first && codePoint <= last);

/** Each character of a text, once, that no certificate could print. A line end is none. */
export const unprintableIn = (text: string): readonly string[] =>
  [...new Set(text)].filter(
    (character) => character !== "\n" && !isCovered(character.codePointAt(0) as number),
  );

/** What people mean by it, in characters that can be printed. */
const instead: Readonly<Record<string, string>> = {
  "⌀": "Ø",
  "∅": "Ø",
  "℃": "°C",
  "℉": "°F",
  "\t": "a space",
  "\u2003": "a space",
  "\u2002": "a space",
  "\u3000": "a space",
  "㎜": "mm",
  "㎝": "cm",
  "㏀": "kΩ",
  "㏁": "MΩ",
  "≙": "=",
  "≅": "≈",
};

/** As it is shown to people: what cannot be seen is named by its code alone. */
export const shownCharacter = (character: string): string => {
  const code = (character.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, "0");
  if (character === "\t") return "a tab (U+0009)";
  return /[\p{C}\p{Z}]/u.test(character) ? `U+${code}` : `“${character}” (U+${code})`;
};

/** What to write in its place. */
export const writeInstead = (character: string): string => {
  const better = instead[character];
  if (better === "a space") return "Write a space instead.";
  return better === undefined
    ? "Write it in Latin, Greek or Cyrillic letters, or in words."
    : `Write “${better}” instead.`;
};

/** What is said at a field that holds one: a certificate prints what stands there. Null: all of it can be printed. */
export const unprintableMessage = (text: string): string | null => {
  const [first] = unprintableIn(text);
  return first === undefined
    ? null
    : `A certificate cannot print ${shownCharacter(first)}: its font does not have it. ${writeInstead(first)}`;
};
