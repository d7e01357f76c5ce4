import { describe, expect, it } from "vitest";
import { decimalRoom } from "@/lib/documents/certificate/aligned-number";
import { inLine, together, wordsOf } from "@/lib/documents/certificate/words";
import { bilingual, short } from "./examples";

describe("the words of a document", () => {
  it("are English alone where the content names no languages", () => {
    const { caption, isBilingual, language, sentence } = wordsOf(short);
    expect([caption("results"), caption("pageOf", { page: "1", pages: "2" })]).toEqual([
      ["Results"],
      ["page 1 of 2"],
    ]);
    expect({ isBilingual, language, said: sentence("None made.") }).toEqual({
      ...{ isBilingual: false, language: "en", said: ["None made."] },
    });
  });

  it("stand in each language of the content, and once where they are the same or not translated", () => {
    const { caption, isBilingual, sentence } = wordsOf(bilingual);
    expect(isBilingual).toBe(true);
    expect(caption("endOf", { number: "C-1" })).toEqual([
      "End of certificate C-1",
      "Ende des Kalibrierscheins C-1",
    ]);
    expect(caption("role.voltmeter")).toEqual(["Voltmeter"]);
    expect(sentence("None made.")).toEqual(["None made.", "Keine vorgenommen."]);
    expect(sentence("HX-K-4471")).toEqual(["HX-K-4471"]);
  });

  it("are joined language by language", () => {
    expect(together(": ", ["Reason", "Grund"], ["4471"])).toEqual(["Reason: 4471", "Grund: 4471"]);
    expect(together(", ", ["a"], ["b"])).toEqual(["a, b"]);
    expect(inLine(["page 1", "Seite 1"])).toBe("page 1 / Seite 1");
  });
});

it("figures of a column stand under their decimal points, and words are left at its edge", () => {
  const column = ["0.75", "1.2", "12", "none"];
  expect(column.map((text) => Math.round(decimalRoom(text, column, 1000)))).toEqual([0, 497, 1243, 0]);
});
