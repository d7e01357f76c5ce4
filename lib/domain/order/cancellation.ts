const begins = "This order was cancelled: ";

/** What the customer reads of it, kept among what was said about the order. */
export const cancellationNote = (reason: string): string => `${begins}${reason}`;

/** Why, out of that note. */
export const cancellationReason = (note: string): string => note.slice(begins.length);

/** The note that says why, where there is one: orders cancelled before notes were kept have none. */
export const cancellationIn = (notes: readonly { readonly text: string }[]): string | null =>
  notes.findLast(({ text }) => text.startsWith(begins))?.text ?? null;
