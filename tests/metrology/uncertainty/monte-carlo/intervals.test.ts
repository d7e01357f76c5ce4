import { describe, expect, it } from "vitest";
import { summarize } from "@/lib/metrology/uncertainty/monte-carlo/summarize";
import { validateGum } from "@/lib/metrology/uncertainty/monte-carlo/validate-gum";
import { outcomeValue } from "../outcome-value";

/** Every order of the values. */
function orders(values: readonly number[]): number[][] {
  if (values.length < 2) return [[...values]];
  return values.flatMap((value, i) =>
    orders([...values.slice(0, i), ...values.slice(i + 1)]).map((rest) => [value, ...rest]),
  );
}

describe("summarize, whatever the order of the trials", () => {
  // JCGM 101:2008, 7.7.2 to 7.7.4. M = 5, p = 0.6: pM = 3 = q, and there are M − q = 2 intervals, from the 1st trial to
  // the 4th and from the 2nd to the 5th; (M − q)/2 = 1 = r is the symmetric one.
  it("takes the later interval where it is the shorter one", () => {
    const all = orders([1, 2, 4, 5, 5.5]);
    expect(all).toHaveLength(120);
    for (const order of all) {
      const { symmetric, shortest } = outcomeValue(summarize(Float64Array.from(order), 0.6));
      expect(symmetric).toEqual({ low: 1, high: 5 });
      expect(shortest).toEqual({ low: 2, high: 5.5 });
    }
  });

  it("takes the first of them where it is, or where both are equally short", () => {
    for (const order of orders([1, 1.5, 2, 4, 6])) {
      expect(outcomeValue(summarize(Float64Array.from(order), 0.6)).shortest).toEqual({ low: 1, high: 4 });
    }
    for (const order of orders([1, 2, 3, 4, 5])) {
      expect(outcomeValue(summarize(Float64Array.from(order), 0.6)).shortest).toEqual({ low: 1, high: 4 });
    }
  });

  // M = 5, p = 0.8: q = 4, one interval only, from the least trial to the greatest.
  it("reaches from the least to the greatest where one trial is to spare", () => {
    for (const order of orders([-7, -2, 0, 3, 8])) {
      const { symmetric, shortest } = outcomeValue(summarize(Float64Array.from(order), 0.8));
      expect(symmetric).toEqual({ low: -7, high: 8 });
      expect(shortest).toEqual({ low: -7, high: 8 });
    }
  });

  it("finds the shortest interval of a skewed distribution at its dense upper end", () => {
    // 1 − v³ of the middles v of 10 000 steps: the 95 % nearest to 1 are those with v below 0.95.
    const values = Float64Array.from({ length: 10_000 }, (_, i) => 1 - ((i + 0.5) / 10_000) ** 3);
    const { shortest } = outcomeValue(summarize(values, 0.95));
    expect(shortest.low).toBe(1 - (9500.5 / 10_000) ** 3);
    expect(shortest.high).toBe(1 - (0.5 / 10_000) ** 3);
  });

  // Eq. 16 and 17: mean 2, u² = ((1 − 2)² + (3 − 2)²)/(2 − 1) = 2. pM = 1.2, q = 1: from the 1st to the 2nd.
  it("is content with two trials", () => {
    const { estimate, standardUncertainty, symmetric } = outcomeValue(summarize(Float64Array.of(3, 1), 0.6));
    expect(estimate).toBe(2);
    expect(standardUncertainty).toBe(Math.sqrt(2));
    expect(symmetric).toEqual({ low: 1, high: 3 });
  });
});

describe("validateGum at δ itself, which still validates (JCGM 101:2008, 8.1)", () => {
  // u = 1 with one digit: δ = 0.5. The GUM's interval is 8 … 12; all these numbers are exact in binary.
  const gum = { estimate: 10, standardUncertainty: 1, expanded: 2 };
  it.each([
    [8.5, 12, true],
    [7.5, 12, true],
    [8, 12.5, true],
    [8, 11.5, true],
    [8.53125, 12, false],
    [8, 11.46875, false],
  ])("%d … %d: %s", (low, high, isValid) => {
    expect(outcomeValue(validateGum(gum, { low, high }, 1))).toEqual({
      isValid,
      tolerance: 0.5,
      lowDifference: Math.abs(8 - low),
      highDifference: Math.abs(12 - high),
    });
  });
});
