import { describe, expect, it } from "vitest";
import { errorFunction } from "@/lib/metrology/number/error-function";
import { combine } from "@/lib/metrology/uncertainty/combine";
import {
  coverageFactor,
  TWO_SIGMA_PROBABILITY,
  truncatedDegreesOfFreedom,
} from "@/lib/metrology/uncertainty/coverage-factor";
import { standardUncertainty } from "@/lib/metrology/uncertainty/standard-uncertainty";

describe("standardUncertainty", () => {
  it("of each way to state it", () => {
    expect(standardUncertainty({ kind: "rectangular", halfWidth: 0.3 })).toBeCloseTo(0.17320508, 8);
    expect(standardUncertainty({ kind: "expanded", expanded: 0.3, coverageFactor: 2 })).toBe(0.15);
    expect(standardUncertainty({ kind: "standard", standard: 1.6 })).toBe(1.6);
    expect(standardUncertainty({ kind: "zero" })).toBe(0);
  });
});

describe("combine", () => {
  it("adds squares, whatever the signs", () => {
    const { standardUncertainty: u } = combine([
      { effect: 3, degreesOfFreedom: null },
      { effect: -4, degreesOfFreedom: null },
    ]);
    expect(u).toBe(5);
  });

  it("has infinite degrees of freedom when every line has", () => {
    expect(combine([{ effect: 3, degreesOfFreedom: null }]).degreesOfFreedom).toBeNull();
  });

  it("gives a single line its own ν back", () => {
    for (const nu of [1, 3, 9, 10, 49]) {
      const { degreesOfFreedom } = combine([{ effect: 0.37, degreesOfFreedom: nu }]);
      expect(truncatedDegreesOfFreedom(degreesOfFreedom ?? 0)).toBe(nu);
    }
  });

  // JCGM 100:2008, G.4.1 note to the example: y = b·x1·x2·x3, relative u 0.25, 0.57, 0.82 %, n = 10, 5, 15.
  it("gives ν_eff = 19 and u = 1.03 % for the example of JCGM 100:2008, G.4.1", () => {
    const { standardUncertainty: u, degreesOfFreedom } = combine([
      { effect: 0.25, degreesOfFreedom: 9 },
      { effect: 0.57, degreesOfFreedom: 4 },
      { effect: 0.82, degreesOfFreedom: 14 },
    ]);
    expect(u.toFixed(2)).toBe("1.03");
    expect(degreesOfFreedom?.toFixed(1)).toBe("19.0");
  });

  it("gives the same ν_eff flattened as nested, for a stage that is not cut to whole numbers", () => {
    const inner = [
      { effect: 0.1, degreesOfFreedom: 5 },
      { effect: 0.15, degreesOfFreedom: null },
      { effect: -0.07, degreesOfFreedom: 12 },
    ];
    const stage = combine(inner);
    const scale = 38.46;
    const outer = { effect: 2, degreesOfFreedom: 7 };
    const nested = combine([
      outer,
      { effect: stage.standardUncertainty * scale, degreesOfFreedom: stage.degreesOfFreedom },
    ]);
    const flat = combine([outer, ...inner.map((line) => ({ ...line, effect: line.effect * scale }))]);
    expect(flat.standardUncertainty).toBeCloseTo(nested.standardUncertainty, 12);
    expect(flat.degreesOfFreedom).toBeCloseTo(nested.degreesOfFreedom ?? 0, 9);
  });

  it("of nothing is zero", () => {
    expect(combine([])).toEqual({ standardUncertainty: 0, degreesOfFreedom: null });
    expect(combine([{ effect: 0, degreesOfFreedom: 4 }])).toEqual({
      standardUncertainty: 0,
      degreesOfFreedom: null,
    });
  });

  it("never has more ν than all together and never fewer than the least", () => {
    const lines = [4, 9, 22].map((degreesOfFreedom, i) => ({ effect: 0.3 + i * 0.11, degreesOfFreedom }));
    const nu = combine(lines).degreesOfFreedom ?? 0;
    expect(nu).toBeGreaterThanOrEqual(4);
    expect(nu).toBeLessThanOrEqual(4 + 9 + 22);
  });
});

describe("coverageFactor", () => {
  it("is two for a normal distribution, exactly", () => {
    expect(coverageFactor(null)).toEqual({ ok: true, value: 2 });
    expect(errorFunction(Math.SQRT2)).toBeCloseTo(TWO_SIGMA_PROBABILITY, 15);
  });

  it.each([
    [1, "13.97"],
    [9, "2.32"],
    [9.999, "2.32"],
    [10, "2.28"],
    [15_500, "2.00"],
  ])("cuts ν = %d to the next lower whole number: k = %s", (nu, expected) => {
    const k = coverageFactor(nu);
    expect(k.ok && k.value.toFixed(2)).toBe(expected);
  });

  it("takes 8.999 999 999 999 for the nine it is", () => {
    expect(coverageFactor(8.999999999999)).toEqual(coverageFactor(9));
    expect(coverageFactor(8.9999)).not.toEqual(coverageFactor(9));
  });

  it.each([0.99, 0, -3, Number.NaN])("refuses ν = %d", (nu) => {
    const k = coverageFactor(nu);
    expect(k.ok).toBe(false);
    if (!k.ok) expect(k.problem.message).toContain("degrees of freedom");
  });

  it("stays near two for very many degrees of freedom", () => {
    for (const nu of [1e5, 1e9, 1e300]) {
      const k = coverageFactor(nu);
      expect(k.ok && k.value).toBeCloseTo(2, 4);
    }
  });
});
