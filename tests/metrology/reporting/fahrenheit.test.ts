import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { celsiusText, type FahrenheitQuantity, fahrenheitText } from "@/lib/metrology/reporting/fahrenheit";
import { reportInFahrenheit } from "@/lib/metrology/reporting/report-in-fahrenheit";

const toF = (celsius: number, decimals: number, quantity: FahrenheitQuantity = "value") => {
  const text = fahrenheitText(celsius, decimals, quantity);
  return text.ok ? text.value : text.problem.kind;
};
const toC = (fahrenheit: number, decimals: number, quantity: FahrenheitQuantity = "value") => {
  const text = celsiusText(fahrenheit, decimals, quantity);
  return text.ok ? text.value : text.problem.kind;
};

describe("fahrenheitText", () => {
  it.each([
    [0, 0, "value", "32"],
    [100, 1, "value", "212.0"],
    [-40, 2, "value", "-40.00"],
    [-17.78, 3, "value", "-0.004"],
    [1000, 0, "value", "1832"],
    [1000, -2, "value", "1800"],
    [1e21, 0, "value", "1800000000000000000032"],
    [1, 1, "difference", "1.8"],
    [-0.5, 2, "difference", "-0.90"],
    [0.05, 1, "difference", "0.1"],
    [0.25, 1, "difference", "0.4"],
    [0.75, 1, "difference", "1.4"],
    [0, 2, "difference", "0.00"],
  ] as const)("%d °C to %i decimals as a %s is %s °F", (celsius, decimals, quantity, expected) => {
    expect(toF(celsius, decimals, quantity)).toBe(expected);
  });

  it("600 °F stays 600 °F through its float64 in °C", () => {
    expect(toC(600, 3)).toBe("315.556");
    expect(toF(2840 / 9, 10)).toBe("600.0000000000");
  });

  it("every whole °F comes back, for values and differences", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -4000, max: 50_000 }),
        fc.integer({ min: 0, max: 3 }),
        fc.constantFrom("value" as const, "difference" as const),
        (tenths, decimals, quantity) => {
          const fahrenheit = Number(`${tenths}e-1`);
          const celsius = Number(toC(fahrenheit, 12, quantity));
          expect(Number(toF(celsius, decimals + 1, quantity))).toBe(fahrenheit);
        },
      ),
    );
  });
});

describe("celsiusText", () => {
  it.each([
    [32, 2, "value", "0.00"],
    [212, 0, "value", "100"],
    [-40, 0, "value", "-40"],
    [0, 4, "value", "-17.7778"],
    [1832, -3, "value", "1000"],
    [1.8, 1, "difference", "1.0"],
    [2, 4, "difference", "1.1111"],
    [-2, 4, "difference", "-1.1111"],
    [0.09, 1, "difference", "0.0"],
    [0.27, 1, "difference", "0.2"],
  ] as const)("%d °F to %i decimals as a %s is %s °C", (fahrenheit, decimals, quantity, expected) => {
    expect(toC(fahrenheit, decimals, quantity)).toBe(expected);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])("refuses %d, both ways", (x) => {
    for (const refusal of [fahrenheitText(x, 1, "value"), celsiusText(x, 1, "difference")])
      expect(refusal.ok ? "" : refusal.problem.message).toBe(`${x} is not a number`);
    expect(toC(x, 1)).toBe("not-finite");
    expect(toF(x, 1)).toBe("not-finite");
  });
});

describe("reportInFahrenheit", () => {
  const report = (...args: Parameters<typeof reportInFahrenheit>) => {
    const reported = reportInFahrenheit(...args);
    return reported.ok ? [reported.value.value, reported.value.expanded] : reported.problem.kind;
  };

  it("rounds once, in its own unit", () => {
    // 1.02 °C is 1.836 °F and prints 1.8; rounded to 1.0 °C first it would also, but 0.97 is 1.746 and not 1.8.
    expect(report(1000.04, 0.97, 2, "value")).toEqual(["1832.1", "1.7"]);
    expect(report(0.26, 0.5, 2, "difference")).toEqual(["0.47", "0.90"]);
    expect(report(-0.26, 0.5, 1, "difference")).toEqual(["-0.5", "0.9"]);
  });

  it("keeps U at the capability, in °F", () => {
    expect(report(0, 0.3, 2, "difference", 0.5)).toEqual(["0.00", "0.90"]);
    expect(report(0, 0.3, 2, "difference", 0.247)).toEqual(["0.00", "0.54"]);
    // 0.247 °C is 0.4446 °F: 0.44 would be below.
    expect(report(0, 0.2, 2, "difference", 0.247)).toEqual(["0.00", "0.45"]);
    expect(report(0, 0.2, 2, "difference", null)).toEqual(["0.00", "0.36"]);
  });

  it.each<[string, Parameters<typeof reportInFahrenheit>, string]>([
    ["the value", [Number.NaN, 1, 2, "value"], "not-finite"],
    ["U", [1, Number.NaN, 2, "value"], "not-finite"],
    ["U of zero", [1, 0, 2, "value"], "outside-range"],
    ["the capability", [1, 1, 2, "value", Number.NaN], "not-finite"],
    ["a capability of zero", [1, 1, 2, "value", 0], "outside-range"],
  ])("refuses %s", (_, args, kind) => {
    expect(report(...args)).toBe(kind);
  });

  it("names the number that is none", () => {
    const refusal = reportInFahrenheit(1, Number.NaN, 2, "value");
    expect(refusal.ok ? "" : refusal.problem.message).toBe("NaN is not a number");
  });
});
