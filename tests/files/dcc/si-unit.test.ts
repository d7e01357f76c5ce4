import { describe, expect, it } from "vitest";
import { decimalNumber, halfLastDigit, isDecimal } from "@/lib/files/dcc/decimal-text";
import { siUnit } from "@/lib/files/dcc/si-unit";

describe("units of the D-SI", () => {
  it.each([
    ["\\one", 0, ""],
    ["\\kelvin", 0, "kelvin^1"],
    ["\\micro\\volt", -6, "volt^1"],
    ["\\milli\\volt\\per\\kelvin", -3, "kelvin^-1 volt^1"],
    ["\\volt\\per\\milli\\kelvin", 3, "kelvin^-1 volt^1"],
    ["\\metre\\tothe{2}", 0, "metre^2"],
    ["\\centi\\metre\\tothe{3}", -6, "metre^3"],
    ["\\metre\\per\\second\\tothe{2}", 0, "metre^1 second^-2"],
    ["\\per\\milli\\metre\\tothe{2}", 6, "metre^-2"],
    ["\\volt\\volt", 0, "volt^2"],
    ["\\percent", 0, "percent^1"],
  ])("%s", (written, shift, dimension) => {
    expect(siUnit(written)).toEqual({ ok: true, unit: { shift, dimension } });
  });

  it.each([
    ["", /ends before a unit/],
    ["°C", /no unit of the D-SI/],
    ["mV", /no unit of the D-SI/],
    ["\\voltt", /\\volt is near it/],
    ["\\kelvn", /\\kelvin is near it/],
    ["\\micro\\micro\\volt", /no unit of the D-SI/],
    ["\\milli", /ends before a unit/],
    ["\\volt\\per", /ends before a unit/],
    ["\\per\\per\\volt", /no unit stands before/],
    ["\\milli\\per\\volt", /no unit stands before/],
    ["\\tothe{2}", /needs a unit before/],
    ["\\metre\\tothe", /needs a unit before/],
    ["\\metre\\tothe{x}", /needs a unit before/],
    ["\\metre\\tothe{2}\\tothe{2}", /needs a unit before/],
    ["\\volt \\kelvin", /no unit of the D-SI/],
  ])("%s is refused", (written, message) => {
    const parsed = siUnit(written);
    expect(parsed.ok ? "" : parsed.message).toMatch(message);
  });
});

describe("decimals of the D-SI", () => {
  it.each(["0", "-1.5", "+.5", "5.", "1e3", "1.2E-5", "NaN"])("%s", (written) =>
    expect(isDecimal(written)).toBe(true),
  );
  it.each(["", ".", "1,5", "1 5", "--1", "0x1", "Infinity", "1e", "1e1.5", "١"])("%j is none", (written) => {
    expect(isDecimal(written)).toBe(false);
    expect(decimalNumber(written)).toBeNull();
  });

  it("are shifted without a second rounding", () => {
    expect(decimalNumber("0.020613", 6)).toBe(20613);
    expect(decimalNumber("0.1", 6)).toBe(100000);
    expect(decimalNumber("1.1e-6", 6)).toBe(1.1);
    expect(decimalNumber("-0.0011", 3)).toBe(-1.1);
    expect(decimalNumber("NaN", 3)).toBeNull();
  });

  it("tell half of their last digit", () => {
    expect(halfLastDigit("1.20")).toBe(0.005);
    expect(halfLastDigit("12")).toBe(0.5);
    expect(halfLastDigit("0.020613", 6)).toBe(0.5);
    expect(halfLastDigit("NaN")).toBe(0);
  });
});
