import { describe, expect, it } from "vitest";
import {
  flag,
  list,
  optionalNumber,
  optionalText,
  parseDecimal,
  rows,
  secret,
  text,
} from "@/lib/web/form-fields";

const form = (entries: readonly (readonly [string, string])[]) => {
  const data = new FormData();
  for (const [name, value] of entries) data.append(name, value);
  return data;
};

describe("parseDecimal", () => {
  it.each([
    ["0.25", 0.25],
    ["0,25", 0.25],
    ["−8,75", -8.75],
    ["-8.75", -8.75],
    [" 1e-3 ", 0.001],
    [".5", 0.5],
    ["12.", 12],
  ])("reads %j", (typed, value) => {
    expect(parseDecimal(typed)).toBe(value);
  });

  it.each(["", "1,000.5", "1 000", "0x10", "Infinity", "NaN", "1e", "twelve", "1.2.3", "--1"])(
    "does not guess at %j",
    (typed) => {
      expect(parseDecimal(typed)).toBeNaN();
    },
  );
});

describe("fields", () => {
  it("trims text, but never a password", () => {
    const data = form([
      ["name", "  Mira "],
      ["password", " words with spaces "],
      ["empty", "  "],
    ]);
    expect(text(data, "name")).toBe("Mira");
    expect(secret(data, "password")).toBe(" words with spaces ");
    expect(optionalText(data, "empty")).toBeUndefined();
    expect(optionalNumber(data, "empty")).toBeUndefined();
    expect(text(data, "absent")).toBe("");
  });

  it("takes a ticked box and several boxes of one name", () => {
    const data = form([
      ["roles", "technician"],
      ["roles", "signatory"],
    ]);
    expect(list(data, "roles")).toEqual(["technician", "signatory"]);
    expect([flag(data, "roles"), flag(data, "absent")]).toEqual([true, false]);
  });

  it("keeps the place of each row, and leaves out empty ones at the end only", () => {
    const data = form([
      ["findings.points.0.celsius", "300"],
      ["findings.points.1.celsius", ""],
      ["findings.points.2.celsius", "500"],
      ["findings.points.2.deviation", "-2"],
      ["findings.points.3.celsius", " "],
      ["findingsxpoints.7.celsius", "9"],
    ]);
    expect(rows(data, "findings.points", ["celsius", "deviation"])).toEqual([
      { celsius: "300", deviation: "" },
      { celsius: "", deviation: "" },
      { celsius: "500", deviation: "-2" },
    ]);
    expect(rows(data, "corrections", ["microvolt"])).toEqual([]);
  });
});
