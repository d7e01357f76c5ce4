import { expect, it } from "vitest";
import { csvCell, csvLine } from "@/lib/domain/csv/csv-line";

it.each([
  ["=1+1", "'=1+1"],
  ["+cmd|' /C calc'!A0", "'+cmd|' /C calc'!A0"],
  ["-2+3", "'-2+3"],
  ["@SUM(A1)", "'@SUM(A1)"],
  ["\t=1", "'\t=1"],
  ['=HYPERLINK("x")', '"\'=HYPERLINK(""x"")"'],
])("lets no text become a formula: %s", (typed, written) => {
  expect(csvCell(typed)).toBe(written);
});

it.each([
  ["\u22121.5", "-1.5"],
  ["-0.12", "-0.12"],
  ["+3", "+3"],
  ["2.00", "2.00"],
])("leaves the figure %s a figure, with a point and a plain sign", (typed, written) => {
  expect(csvCell(typed)).toBe(written);
});

it("quotes what would break the line", () => {
  expect(csvLine(["a,b", 'say "x"', "two\nlines", ""])).toBe('"a,b","say ""x""","two\nlines",\r\n');
});
