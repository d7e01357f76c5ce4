import type { ComputedNumbers } from "@/lib/documents/authenticity/numbers/compute-numbers";
import type { NumbersWords } from "@/lib/documents/authenticity/numbers/numbers-words";

/** What came of computing the numbers again, as lines for a terminal: the verdict, why, and each figure that differs. */
export const numbersLines = (words: NumbersWords, { differences }: ComputedNumbers): readonly string[] => [
  "",
  words.title,
  ...words.sentences,
  ...differences.map(
    ({ table, row, column, printed, recomputed }) =>
      `  ${table}, ${row}, ${column}: printed ${printed || "nothing"}, computed again ${recomputed || "nothing"}`,
  ),
];
