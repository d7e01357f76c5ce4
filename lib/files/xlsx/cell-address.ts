/** "C" → 2, "AA" → 26; null where it is no column. */
export const columnIndex = (letters: string): number | null => {
  if (!/^[A-Z]{1,3}$/.test(letters)) return null;
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
};

/** "C5" → its column, counted from 0. */
export const columnOf = (reference: string): number | null =>
  columnIndex(/^([A-Z]+)[1-9]\d{0,6}$/.exec(reference)?.[1] ?? "");
