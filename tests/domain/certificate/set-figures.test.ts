import { describe, expect, it } from "vitest";
import { figureIn } from "@/lib/domain/certificate/set-figures";

describe("a figure in the style of the leading language", () => {
  it.each([
    ["0.7", "0.7", "0,7"],
    ["−0.7", "−0.7", "−0,7"],
    ["-0.7", "−0.7", "−0,7"],
    ["36\u202f229.4", "36\u202f229.4", "36\u202f229,4"],
    ["1000", "1000", "1000"],
    ["± 4.0", "± 4.0", "± 4,0"],
    ["> 99.9 %", "> 99.9 %", "> 99,9 %"],
    ["−5.93 × 10⁻²", "−5.93 × 10⁻²", "−5,93 × 10⁻²"],
  ])("%s", (text, english, german) => {
    expect(figureIn("en", text)).toBe(english);
    expect(figureIn("de", text)).toBe(german);
  });

  it.each(["2026-03-05", "R-2026-0003", "", "a1", "µV/°C²", "0.7 to 0.9", "1.2.3", "SHA-256", "1,5"])(
    "leaves %s as it is: a date, a number of a document, a name or a sentence",
    (text) => {
      expect(figureIn("en", text)).toBe(text);
      expect(figureIn("de", text)).toBe(text);
    },
  );
});
