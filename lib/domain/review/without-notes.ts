import type { ReviewException } from "./review-exception";

/** What asks for something: a note is said for completeness, and no result is opened for it. */
export const withoutNotes = (exceptions: readonly ReviewException[]): readonly ReviewException[] =>
  exceptions.filter(({ isNote }) => !isNote);
