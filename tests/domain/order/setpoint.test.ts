import { describe, expect, it } from "vitest";
import { celsiusOf, readSetpoints } from "@/lib/domain/order/setpoint";

describe("a setpoint as typed", () => {
  it("is the nearest float64 to the exact quotient", () => {
    expect(celsiusOf("600", "F")).toBe(2840 / 9);
    expect(celsiusOf("212", "F")).toBe(100);
    expect(celsiusOf("-40", "F")).toBe(-40);
    expect(celsiusOf("32", "F")).toBe(0);
    expect(Object.is(celsiusOf("-0", "C"), 0)).toBe(true);
    expect(celsiusOf("1000.1", "C")).toBe(1000.1);
    // 932.18 °F is 500.1 °C exactly, which the same formula in float64 misses.
    expect(celsiusOf("932.18", "F")).toBe(500.1);
    expect(((932.18 - 32) * 5) / 9).not.toBe(500.1);
  });

  it("is kept as typed", () => {
    const read = readSetpoints("600; 1200\n1832.90", "F");
    expect(read.ok && read.setpoints.map(({ typed }) => typed)).toEqual(["600", "1200", "1832.90"]);
  });

  it("reads spaces, semicolons, new lines and a comma with a space", () => {
    for (const text of ["300 500 700", "300; 500; 700", "300\n500\n700", " 300, 500, 700 "]) {
      const read = readSetpoints(text, "C");
      expect(read.ok && read.setpoints.map(({ celsius }) => celsius)).toEqual([300, 500, 700]);
    }
    expect(readSetpoints("", "C")).toEqual({ ok: true, setpoints: [] });
  });

  it.each([
    ["300,500", "two ways"],
    ["300 500 500", "twice"],
    // The same temperature in two ways of writing.
    ["500 500.0", "twice"],
    ["500 300", "low to high"],
    ["300 °C", "not a temperature"],
    ["1e3", "not a temperature"],
    ["NaN", "not a temperature"],
    [Array.from({ length: 31 }, (_, i) => 300 + i).join(" "), "More than 30"],
  ])("refuses %j with its remedy", (text, word) => {
    const read = readSetpoints(text, "C");
    expect(read.ok ? "" : read.message).toContain(word);
  });
});
