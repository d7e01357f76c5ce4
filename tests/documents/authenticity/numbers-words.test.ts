import { describe, expect, it } from "vitest";
import { numbersWords } from "@/lib/documents/authenticity/numbers/numbers-words";

const computed = {
  ...{ problems: [], differences: [], comparisons: [], unproved: [], readings: 7984 },
  file: "sealed",
  engine: { printed: "1.0.0", here: "1.0.0" },
} as const;

describe("the words of numbers computed again", () => {
  it("say which file it was and how many readings, where something came of it", () => {
    expect(numbersWords("C-1", computed).sentences.join(" ")).toMatch(
      /was sealed with .* From 7984 readings/,
    );
  });

  it("say only what stood in the way and what to do, where nothing came of it", () => {
    const problems = ["this is the evidence of certificate C-2, not of C-1"];
    const words = numbersWords("C-1", { ...computed, problems, file: "another" });
    expect(words).toEqual({
      kind: "look",
      title: "The numbers could not be computed again",
      sentences: [
        "This is the evidence of certificate C-2, not of C-1.",
        "Choose the evidence file of C-1 itself: its customer finds it beside the certificate.",
      ],
    });
    const sealed = numbersWords("C-1", { ...computed, problems: ["the evidence has nothing of S-1"] });
    expect(sealed.sentences.at(-1)).toContain("ask the laboratory");
  });
});
