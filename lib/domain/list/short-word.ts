/** What a serial is looked for by, without what people leave out: keep to `keyOf` of the lists. */
const lettersOf = (text: string): string => text.replace(/[ \-_/.]/g, "");

/** Too short for the middle of a serial: one or two letters and figures, as "K-". */
export const isShortWord = (text: string): boolean => lettersOf(text).length < 3;
