import type { ComputedNumbers } from "./compute-numbers";

export type NumbersWords = {
  readonly kind: "good" | "look" | "bad";
  readonly title: string;
  /** A sentence each: what stands in the way, which file it was, by which engine. */
  readonly sentences: readonly string[];
};

/** What the sealed document says of the file that all was computed from. */
const fileTexts = {
  sealed: "It is the evidence that was sealed with this certificate.",
  another:
    "The sealed document names another file by its SHA-256: this one is not the evidence it was issued with.",
  unsaid:
    "The document was sealed before documents named their evidence: of the inputs beside the readings, it says nothing.",
} as const;

const verdictOf = ({
  problems,
  differences,
  comparisons,
  unproved,
  file,
}: ComputedNumbers): Pick<NumbersWords, "kind" | "title"> => {
  if (problems.length > 0) return { kind: "look", title: "The numbers could not be computed again" };
  const other = file === "another" ? ", from another file than the one sealed with them" : "";
  if (differences.length > 0)
    return {
      kind: "bad",
      title: `${differences.length} of ${comparisons.length} printed figures come out otherwise${other}`,
    };
  if (unproved.length > 0)
    return {
      kind: "bad",
      title: `The figures come out again${other}, but not all readings are those the laboratory recorded`,
    };
  if (file === "another")
    return {
      kind: "bad",
      title: "The figures come out again, but from another file than the one sealed with them",
    };
  return { kind: "good", title: `All ${comparisons.length} printed figures come out again` };
};

const remedyOf = (number: string, file: ComputedNumbers["file"]): string =>
  file === "sealed"
    ? "It is the evidence that was sealed with this certificate: ask the laboratory."
    : `Choose the evidence file of ${number} itself: its customer finds it beside the certificate.`;

const asSentence = (problem: string): string => `${problem.charAt(0).toUpperCase()}${problem.slice(1)}.`;

/** What came of computing a document's numbers again, in the words of page, command and offline page alike. */
export const numbersWords = (number: string, computed: ComputedNumbers): NumbersWords => {
  const { engine, readings } = computed;
  const printedBy =
    engine.here === engine.printed ? ", as when it was printed" : `; it was printed by ${engine.printed}`;
  return {
    ...verdictOf(computed),
    sentences: [
      ...[...computed.problems, ...computed.unproved].map(asSentence),
      // Nothing came of a file that could not be computed from: neither which it was, nor what was read of it, is shown.
      ...(computed.problems.length > 0
        ? [remedyOf(number, computed.file)]
        : [
            fileTexts[computed.file],
            `From ${readings} readings of ${number}, by the engine ${engine.here}${printedBy}. The same program computed both: this shows that paper and readings belong together, not that the program is right.`,
          ]),
    ],
  };
};
