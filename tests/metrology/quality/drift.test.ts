import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createStream, uniform } from "@/lib/metrology/number/random";
import { predictDrift } from "@/lib/metrology/quality/predict-drift";
import { suggestInterval } from "@/lib/metrology/quality/suggest-interval";
import { problemOf, resultOf } from "../result-of";

const yearly = (values: readonly number[]) => values.map((value, i) => ({ at: 365 * i, value }));

describe("predictDrift", () => {
  it("gives line and interval as worked by hand", () => {
    // x 0 1 2 3, y 0 1 1 2: slope 0.6, mean 1, residuals −0.1 0.3 −0.3 0.1, s² = 0.2/2, Σ(x − x̄)² = 5.
    const line = resultOf(predictDrift([0, 1, 1, 2].map((value, at) => ({ at, value }))));
    expect(line.slope).toBeCloseTo(0.6, 14);
    expect(line.residualStandardDeviation).toBeCloseTo(Math.sqrt(0.1), 14);
    expect(line.standardUncertaintyOfSlope).toBeCloseTo(Math.sqrt(0.02), 14);
    expect(line.degreesOfFreedom).toBe(2);
    expect(line.coverageFactor).toBeCloseTo(4.303, 3);
    const next = line.predict(4);
    expect(next.value).toBeCloseTo(2.5, 14);
    expect(next.high - next.value).toBeCloseTo(
      line.coverageFactor * Math.sqrt(0.1 * (1 + 1 / 4 + 6.25 / 5)),
      12,
    );
    expect(next.value - next.low).toBeCloseTo(next.high - next.value, 12);
  });

  it("holds the next calibration as often as it says", () => {
    const stream = createStream(20250611);
    // Twelve uniform numbers less six: near enough to normal, by means of the test's own.
    const normal = () => Array.from({ length: 12 }, () => uniform(stream)).reduce((a, b) => a + b, -6);
    let held = 0;
    const trials = 2000;
    for (let i = 0; i < trials; i += 1) {
      const line = resultOf(predictDrift(yearly([0, 1, 2, 3, 4].map((x) => 0.1 * x + normal())), 0.9));
      const next = 0.5 + normal();
      const { low, high } = line.predict(365 * 5);
      if (next >= low && next <= high) held += 1;
    }
    expect(held / trials).toBeGreaterThan(0.88);
    expect(held / trials).toBeLessThan(0.92);
  });

  it("refuses what gives no line", () => {
    expect(problemOf(predictDrift(yearly([0, 1])))).toBe("too-few");
    expect(problemOf(predictDrift([1, 2, 3].map((value) => ({ at: 5, value }))))).toBe("too-few");
    expect(problemOf(predictDrift(yearly([0, 1, Number.NaN])))).toBe("not-finite");
    expect(problemOf(predictDrift([{ at: Number.NaN, value: 1 }, ...yearly([0, 1])]))).toBe("not-finite");
    expect(problemOf(predictDrift(yearly([0, 1, 2]), 1))).toBe("outside-range");
    expect(problemOf(predictDrift(yearly([0, 1, 2]), 0))).toBe("outside-range");
  });
});

describe("suggestInterval", () => {
  it("ends where an exact drift reaches the limit, whichever way it goes", () => {
    for (const sign of [1, -1]) {
      const history = yearly([0, 0.1 * sign, 0.2 * sign, 0.3 * sign]);
      const suggested = resultOf(suggestInterval(history, 0.05, 730));
      expect(suggested.interval).toBeCloseTo(365 / 2, 6);
      expect(suggested.endedBy).toBe("drift");
      expect(suggested.expectedChange).toBeLessThanOrEqual(0.05);
    }
  });

  it("is never longer than the stated maximum, nor for a looser limit shorter", () => {
    const values = fc.array(fc.double({ min: -0.1, max: 0.1, noNaN: true }), { minLength: 3, maxLength: 8 });
    const limit = fc.double({ min: 0.01, max: 3, noNaN: true });
    fc.assert(
      fc.property(values, limit, (list, allowed) => {
        const tight = suggestInterval(yearly(list), allowed, 730);
        if (!tight.ok) {
          expect(tight.problem.kind).toBe("no-solution");
          return;
        }
        expect(tight.value.interval).toBeLessThanOrEqual(730);
        expect(tight.value.expectedChange).toBeLessThanOrEqual(allowed);
        const loose = resultOf(suggestInterval(yearly(list), 2 * allowed, 730));
        expect(loose.interval).toBeGreaterThanOrEqual(tight.value.interval);
      }),
    );
    expect(resultOf(suggestInterval(yearly([0, 0.001, 0]), 1, 365))).toMatchObject({
      interval: 365,
      endedBy: "maximum",
    });
  });

  it("counts from the last calibration, whatever the order they are given in", () => {
    const history = yearly([0, 0.11, 0.19, 0.3]);
    const suggested = resultOf(suggestInterval(history, 0.4, 3650));
    expect(resultOf(suggestInterval([...history].reverse(), 0.4, 3650)).interval).toBeCloseTo(
      suggested.interval,
      6,
    );
  });

  it("refuses a standard that scatters by more than is allowed, and limits that are none", () => {
    expect(problemOf(suggestInterval(yearly([0, 1, 0, 1]), 0.1, 365))).toBe("no-solution");
    expect(problemOf(suggestInterval(yearly([0, 1, 2]), 0, 365))).toBe("outside-range");
    expect(problemOf(suggestInterval(yearly([0, 1, 2]), 1, 0))).toBe("outside-range");
    expect(problemOf(suggestInterval(yearly([0, 1, 2]), 1, Number.POSITIVE_INFINITY))).toBe("outside-range");
    expect(problemOf(suggestInterval(yearly([0, 1]), 1, 365))).toBe("too-few");
  });
});
