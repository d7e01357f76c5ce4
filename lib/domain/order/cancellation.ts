const begins = "This order was cancelled: ";

/** What the customer reads of it, kept among what was said about the order. */
export const cancellationNote = (reason: string): string => `${begins}${reason}`;

/** Why, where a note says it: orders cancelled before notes were kept have none. */
export const cancellationIn = (notes: readonly { readonly text: string }[]): string | null =>
  notes.findLast(({ text }) => text.startsWith(begins))?.text.slice(begins.length) ?? null;
