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

  it("say only what stood in the way, where nothing did", () => {
    const words = numbersWords("C-1", { ...computed, problems: ["It belongs to C-2"] });
    expect(words).toEqual({
      kind: "look",
      title: "The numbers could not be computed again",
      sentences: ["It belongs to C-2."],
    });
  });
});
