/**
 * Characters that show nothing, or turn the direction of what stands around them: two names that look alike would differ,
 * or one would read as another. Format characters, line and paragraph separators, and the fillers that draw as a blank.
 */
const hidden = /[\p{Cf}\p{Zl}\p{Zp}\u115f\u1160\u2800\u3164\uffa0]|\u034f|\u17b4|\u17b5/u;

const names: Readonly<Record<string, string>> = {
  "00AD": "soft hyphen",
  "061C": "Arabic letter mark",
  "200B": "zero-width space",
  "200C": "zero-width non-joiner",
  "200D": "zero-width joiner",
  "200E": "left-to-right mark",
  "200F": "right-to-left mark",
  "2028": "line separator",
  "2029": "paragraph separator",
  "202A": "left-to-right embedding",
  "202B": "right-to-left embedding",
  "202C": "pop directional formatting",
  "202D": "left-to-right override",
  "202E": "right-to-left override",
  "2060": "word joiner",
  "2066": "left-to-right isolate",
  "2067": "right-to-left isolate",
  "2068": "first strong isolate",
  "2069": "pop directional isolate",
  FEFF: "byte-order mark",
};

/** The first hidden character of a text, named as Unicode names it: "zero-width space (U+200B)"; null = none. */
export const hiddenCharacterIn = (text: string): string | null => {
  const found = hidden.exec(text)?.[0];
  if (found === undefined) return null;
  const code = (found.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0");
  return `${names[code] ?? "invisible character"} (U+${code})`;
};

/** What is said at the field that holds one. */
export const hiddenCharacterMessage = (named: string): string =>
  `This holds a character that cannot be seen: ${named}. Type the text anew instead of pasting it.`;
