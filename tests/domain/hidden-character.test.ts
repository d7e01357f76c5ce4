import { expect, it } from "vitest";
import { hiddenCharacterIn } from "@/lib/domain/hidden-character";
import { optionalText } from "@/lib/domain/order/field";
import { optionalLine, requiredLine, requiredLines } from "@/lib/domain/typed-text";

it.each([
  ["a\u200bb", "zero-width space (U+200B)"],
  ["\u202etxet", "right-to-left override (U+202E)"],
  ["a\u2028b", "line separator (U+2028)"],
  ["\u3164", "invisible character (U+3164)"],
  ["a\u{e0041}", "invisible character (U+E0041)"],
])("names what cannot be seen in %j", (text, named) => {
  expect(hiddenCharacterIn(text)).toBe(named);
});

it("lets every script stand: letters, marks and signs can be seen", () => {
  for (const text of ["Ångström & Söhne", "Łódź", "東京計測", "مختبر القياس", "№ 7/12 — “B”", "ß²µΩ"])
    expect(hiddenCharacterIn(text)).toBeNull();
});

it.each([
  ["a line", requiredLine("Write it.")],
  ["a line that may be empty", optionalLine()],
  ["several lines", requiredLines("Write it.", 100)],
  ["a note", optionalText(100)],
])("%s that holds one is refused and says which", (_, field) => {
  expect(field.safeParse("Oven\u200b 3").error?.issues[0]?.message).toContain("zero-width space (U+200B)");
  expect(field.parse("Oven 3")).toBe("Oven 3");
});
