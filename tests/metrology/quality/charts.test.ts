import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { controlLimits } from "@/lib/metrology/quality/control-limits";
import { ewmaChart } from "@/lib/metrology/quality/ewma-chart";
import { D2, D4, individualsChart } from "@/lib/metrology/quality/individuals-chart";
import { runRules } from "@/lib/metrology/quality/run-rules";
import { problemOf, resultOf } from "../result-of";

/** Twenty runs of mean 10: half at 9, half at 11, so that s² = 20/19 and every moving range is 2. */
const runs = Array.from({ length: 20 }, (_, i) => (i % 2 === 0 ? 9 : 11));

describe("controlLimits", () => {
  it("stand two and three standard deviations off the mean", () => {
    const limits = resultOf(controlLimits(runs));
    const s = Math.sqrt(20 / 19);
    expect(limits).toMatchObject({ runs: 20, centre: 10 });
    expect(limits.standardDeviation).toBeCloseTo(s, 14);
    expect(limits.warning[0]).toBeCloseTo(10 - 2 * s, 13);
    expect(limits.warning[1]).toBeCloseTo(10 + 2 * s, 13);
    expect(limits.action[0]).toBeCloseTo(10 - 3 * s, 13);
    expect(limits.action[1]).toBeCloseTo(10 + 3 * s, 13);
  });

  it("are refused from too few runs, a missing one, or runs all alike", () => {
    expect(problemOf(controlLimits(runs.slice(1)))).toBe("too-few");
    expect(problemOf(controlLimits([...runs, Number.NaN]))).toBe("not-finite");
    expect(problemOf(controlLimits(runs.map(() => 7)))).toBe("no-solution");
  });

  it("move with the values and do not mind their order", () => {
    const list = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 20, maxLength: 40 });
    fc.assert(
      fc.property(list, fc.integer({ min: -100, max: 100 }), (values, shift) => {
        fc.pre(new Set(values).size > 1);
        const limits = resultOf(controlLimits(values));
        expect(resultOf(controlLimits([...values].reverse()))).toEqual(limits);
        const moved = resultOf(controlLimits(values.map((v) => v + shift)));
        expect(moved.action[0]).toBeCloseTo(limits.action[0] + shift, 8);
        expect(moved.standardDeviation).toBeCloseTo(limits.standardDeviation, 8);
      }),
    );
  });
});

describe("individualsChart", () => {
  it("has the published constants", () => {
    const chart = resultOf(individualsChart(runs));
    expect(D2).toBeCloseTo(2 / Math.sqrt(Math.PI), 3);
    expect(3 / D2).toBeCloseTo(2.66, 3);
    expect(D4).toBe(3.267);
    expect(chart.meanMovingRange).toBe(2);
    expect(chart.movingRangeLimit).toBe(6.534);
    expect(chart.individuals.action[1]).toBeCloseTo(10 + 2.66 * 2, 2);
  });

  it("does not widen for a slow drift as a plain chart does", () => {
    const drifting = Array.from({ length: 30 }, (_, i) => i + (i % 2) * 0.5);
    const plain = resultOf(controlLimits(drifting)).standardDeviation;
    expect(resultOf(individualsChart(drifting)).individuals.standardDeviation).toBeLessThan(plain / 5);
  });

  it("is refused as the plain chart is", () => {
    expect(problemOf(individualsChart([1, 2]))).toBe("too-few");
    expect(problemOf(individualsChart(runs.map(() => 7)))).toBe("no-solution");
  });
});

describe("ewmaChart", () => {
  it("follows the recurrence, with limits that grow to 3σ√(λ/(2 − λ))", () => {
    const points = resultOf(ewmaChart([1, 1, ...Array(60).fill(0)], 0, 1));
    expect(points[0]?.value).toBeCloseTo(0.2, 14);
    expect(points[1]?.value).toBeCloseTo(0.36, 14);
    expect(points[0]?.high).toBeCloseTo(0.6, 12);
    expect(points[1]?.high).toBeCloseTo(3 * Math.sqrt((0.2 / 1.8) * (1 - 0.8 ** 4)), 12);
    expect(points[61]?.high).toBeCloseTo(1, 9);
    expect(points[61]?.low).toBeCloseTo(-1, 9);
  });

  it("shows a lasting shift of one σ that no single run shows", () => {
    for (const shift of [1.2, -1.2]) {
      const values = Array<number>(20).fill(shift);
      expect(resultOf(ewmaChart(values, 0, 1)).some(({ isOut }) => isOut)).toBe(true);
      expect(resultOf(ewmaChart(values, 0, 1, 1)).some(({ isOut }) => isOut)).toBe(false);
    }
  });

  it("refuses a weight, a σ or a run that is none", () => {
    for (const weight of [0, 1.01, Number.NaN])
      expect(problemOf(ewmaChart([1], 0, 1, weight))).toBe("outside-range");
    expect(problemOf(ewmaChart([1], 0, 0))).toBe("outside-range");
    expect(problemOf(ewmaChart([Number.NaN], 0, 1))).toBe("not-finite");
    expect(problemOf(ewmaChart([1], Number.NaN, 1))).toBe("not-finite");
    expect(problemOf(ewmaChart([1], 0, Number.POSITIVE_INFINITY))).toBe("not-finite");
  });
});

describe("runRules", () => {
  const broken = (values: readonly number[]) =>
    resultOf(runRules(values, 0, 1)).map(({ rule, run, side }) => `${run} ${rule} ${side}`);

  it("tells each rule at the run that completes it", () => {
    expect(broken([0, 3.1])).toEqual(["1 beyond-3-sigma above"]);
    expect(broken([-2.1, 0, -2.1])).toEqual(["2 2-of-3-beyond-2-sigma below"]);
    expect(broken([1.1, 1.1, -5e-1, 1.1, 1.1])).toEqual(["4 4-of-5-beyond-1-sigma above"]);
    expect(broken(Array(9).fill(-0.1))).toEqual(["7 8-on-one-side below", "8 8-on-one-side below"]);
  });

  it("is quiet on a limit, across the centre, and at a quiet run after an alarm", () => {
    expect(broken([3, -3])).toEqual([]);
    expect(broken([2.5, -2.5])).toEqual([]);
    expect(broken([2.1, 0, 0, 2.1])).toEqual([]);
    expect(broken([0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0])).toEqual([]);
  });

  it("mirrors with the values", () => {
    const list = fc.array(fc.double({ min: -4, max: 4, noNaN: true }), { maxLength: 40 });
    fc.assert(
      fc.property(list, (values) => {
        const places = (list: readonly number[]) =>
          resultOf(runRules(list, 0, 1)).map(({ rule, run }) => `${run} ${rule}`);
        expect(places(values.map((v) => -v))).toEqual(places(values));
      }),
    );
  });

  it("refuses a missing run or σ", () => {
    expect(problemOf(runRules([Number.NaN], 0, 1))).toBe("not-finite");
    expect(problemOf(runRules([1], Number.NaN, 1))).toBe("not-finite");
    expect(problemOf(runRules([1], 0, Number.POSITIVE_INFINITY))).toBe("not-finite");
    expect(problemOf(runRules([1], 0, 0))).toBe("outside-range");
  });
});
