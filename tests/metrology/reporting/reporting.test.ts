import { describe, expect, it } from "vitest";
import { reportValue } from "@/lib/metrology/reporting/report-value";
import { roundUncertainty } from "@/lib/metrology/reporting/round-uncertainty";
import { typeset } from "@/lib/metrology/reporting/typeset";
import { roundingVectors } from "../vectors/rounding";

describe("reportValue", () => {
  it.each(roundingVectors)("$value ± $expanded at $digits digits ($source)", (vector) => {
    const reported = reportValue(vector.value, vector.expanded, vector.digits);
    expect(reported.ok && [reported.value.value, reported.value.expanded]).toEqual(vector.printed);
  });

  it("names the place both were rounded to", () => {
    const tens = reportValue(36228.77, 49.92, 1);
    expect(tens.ok && tens.value.decimals).toBe(-1);
    const thousandths = reportValue(10.05762, 0.027, 2);
    expect(thousandths.ok && thousandths.value.decimals).toBe(3);
  });

  it.each([
    [Number.NaN, 1],
    [1, Number.NaN],
    [1, 0],
    [1, -1],
    [1, Number.POSITIVE_INFINITY],
  ])("refuses %d ± %d", (value, expanded) => {
    expect(reportValue(value, expanded, 2).ok).toBe(false);
  });
});

it("a value that is none is refused by name", () => {
  const refusal = reportValue(Number.NaN, 1, 2);
  expect(refusal).toEqual({ ok: false, problem: { kind: "not-finite", message: "NaN is not a number" } });
});

describe("roundUncertainty", () => {
  it("never hides more than 5 %, and never adds more than a digit", () => {
    for (const digits of [1, 2] as const) {
      for (let u = 0.00137; u < 2e4; u *= 1.0137) {
        const rounded = roundUncertainty(u, digits);
        if (!rounded.ok) throw new Error(rounded.problem.message);
        const value = Number(rounded.value.text);
        expect(value).toBeGreaterThanOrEqual(0.95 * u);
        expect(value - u).toBeLessThanOrEqual(10 ** -rounded.value.decimals);
      }
    }
  });

  it("at two digits is ordinary rounding", () => {
    for (let u = 0.0137; u < 1e4; u *= 1.0171) {
      const rounded = roundUncertainty(u, 2);
      expect(rounded.ok && Number(rounded.value.text)).toBe(Number(u.toPrecision(2)));
    }
  });

  it("shows as many significant digits as asked for", () => {
    for (const [u, digits, text] of [
      [0.0999, 2, "0.10"],
      [0.996, 2, "1.0"],
      [99.6, 2, "100"],
      [0.96, 1, "1"],
      [9.6, 1, "10"],
      [0.31, 2, "0.31"],
    ] as const) {
      const rounded = roundUncertainty(u, digits);
      expect(rounded.ok && rounded.value.text).toBe(text);
    }
  });

  it("bites at one digit exactly beyond 5 %", () => {
    // 1/0.95 = 1.0526…: below it 1 hides less than 5 %, above it more.
    const below = roundUncertainty(1.0526, 1);
    const above = roundUncertainty(1.0527, 1);
    expect([below.ok && below.value.text, above.ok && above.value.text]).toEqual(["1", "2"]);
  });
});

describe("typeset", () => {
  it.each([
    ["1000", "1000"],
    ["-1000", "\u22121000"],
    ["36229", "36\u202f229"],
    ["-36229.25", "\u221236\u202f229.25"],
    ["1234567", "1\u202f234\u202f567"],
    ["0.123456", "0.123456"],
    ["100000", "100\u202f000"],
    ["NaN", "NaN"],
    ["x36229", "x36229"],
    ["36229 °C", "36229 °C"],
  ])("%s", (plain, set) => {
    expect(typeset(plain)).toBe(set);
  });
});
