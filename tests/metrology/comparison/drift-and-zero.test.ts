import { describe, expect, it } from "vitest";
import { atCommonTimes } from "@/lib/metrology/comparison/at-common-times";
import { removeLinearDrift } from "@/lib/metrology/comparison/remove-linear-drift";
import { subtractZero } from "@/lib/metrology/comparison/subtract-zero";
import { problemOf, resultOf } from "../result-of";

const range = (count: number): number[] => Array.from({ length: count }, (_, i) => i);

describe("removeLinearDrift", () => {
  const seconds = range(12).map((i) => i * 10);
  const emf = (t: number): number => 5000 + 0.02 * (t - 60);

  it("takes drift and parasitic emf out together, whatever the order of the readings", () => {
    const polarity = range(12).map((i) => (i < 8 ? 1 : -1));
    const microvolts = seconds.map((t, i) => (polarity[i] ?? 0) * emf(t) + 1.7);
    const free = resultOf(removeLinearDrift({ seconds, microvolts, polarity }, 60));
    expect(free.microvolt).toBeCloseTo(5000, 9);
    expect(free.slopeMicrovoltPerSecond).toBeCloseTo(0.02, 12);
    expect(free.parasiticMicrovolt).toBeCloseTo(1.7, 9);
    expect(free.degreesOfFreedom).toBe(9);
    expect(free.residualDeviation).toBeLessThan(1e-9);
  });

  it("cannot see a parasitic emf where no lead was reversed", () => {
    const polarity = range(12).map(() => 1);
    const free = resultOf(
      removeLinearDrift({ seconds, microvolts: seconds.map((t) => emf(t) + 1.7), polarity }, 60),
    );
    expect(free.microvolt).toBeCloseTo(5001.7, 9);
    expect(free.parasiticMicrovolt).toBeNull();
  });

  it("is least uncertain in the middle: s/√n there", () => {
    const polarity = range(12).map(() => 1);
    const microvolts = seconds.map((t, i) => emf(t) + (i % 2 ? 1 : -1));
    const middle = resultOf(removeLinearDrift({ seconds, microvolts, polarity }, 55));
    expect(middle.standardUncertainty).toBeCloseTo(middle.residualDeviation / Math.sqrt(12), 12);
    const end = resultOf(removeLinearDrift({ seconds, microvolts, polarity }, 110));
    expect(end.standardUncertainty).toBeGreaterThan(1.5 * middle.standardUncertainty);
  });

  it("has no scatter left from as many readings as it fits", () => {
    const free = resultOf(removeLinearDrift({ seconds: [0, 10], microvolts: [1, 2], polarity: [1, 1] }, 5));
    expect(free).toMatchObject({ degreesOfFreedom: 0, residualDeviation: 0, standardUncertainty: 0 });
    expect(free.microvolt).toBeCloseTo(1.5, 12);
  });

  it("refuses too few readings, one moment, and what is no number or polarity", () => {
    const two = { seconds: [0, 1], microvolts: [1, -1], polarity: [1, -1] };
    expect(problemOf(removeLinearDrift(two, 0))).toBe("too-few");
    expect(problemOf(removeLinearDrift({ ...two, polarity: [1, 0] }, 0))).toBe("not-applicable");
    expect(problemOf(removeLinearDrift({ seconds: [3, 3], microvolts: [1, 1], polarity: [1, 1] }, 0))).toBe(
      "no-solution",
    );
    expect(problemOf(removeLinearDrift({ ...two, microvolts: [1, Number.NaN], polarity: [1, 1] }, 0))).toBe(
      "not-finite",
    );
    expect(problemOf(removeLinearDrift(two, Number.NaN))).toBe("not-finite");
  });
});

describe("atCommonTimes", () => {
  const reference = { seconds: [0, 20, 40], values: [1000, 1000.2, 1000.6] };

  it("brings a reference to the sensor's own moments, and gives none beyond its readings", () => {
    const at = resultOf(atCommonTimes(reference, [-1, 5, 30, 40, 41]));
    expect(at.seconds).toEqual([5, 30, 40]);
    for (const [i, expected] of [1000.05, 1000.4, 1000.6].entries())
      expect(at.values[i]).toBeCloseTo(expected, 9);
  });

  it("refuses what cannot be brought anywhere", () => {
    expect(problemOf(atCommonTimes(reference, [50]))).toBe("too-few");
    expect(problemOf(atCommonTimes(reference, [Number.NaN]))).toBe("not-finite");
    expect(problemOf(atCommonTimes({ seconds: [], values: [] }, [0]))).toBe("too-few");
    expect(problemOf(atCommonTimes({ seconds: [0], values: [] }, [0]))).toBe("not-applicable");
    expect(problemOf(atCommonTimes({ seconds: [0, 0], values: [1, 1] }, [0]))).toBe("not-applicable");
    expect(problemOf(atCommonTimes({ seconds: [0, Number.NaN], values: [1, 1] }, [0]))).toBe("not-finite");
    expect(problemOf(atCommonTimes({ seconds: [0, 1], values: [1, Number.NaN] }, [0]))).toBe("not-finite");
  });
});

describe("subtractZero", () => {
  // A zero that wanders from 1 to 2 µV over the window; the reading itself stands still.
  const shorted = {
    seconds: range(60).map((i) => i + 0.5),
    values: range(60).map((i) => 1 + (i + 0.5) / 60),
  };
  const readings = {
    seconds: range(60).slice(1),
    values: range(60)
      .slice(1)
      .map((i) => 500 + 1 + i / 60),
  };

  it("follows a zero that wanders when it is interpolated", () => {
    const zeroed = resultOf(subtractZero(readings, shorted, "interpolated", 15));
    for (const value of zeroed.values) expect(value).toBeCloseTo(500, 9);
    expect(zeroed.zeroMicrovolt).toBeCloseTo(1.5, 9);
    expect(zeroed.degreesOfFreedom).toBe(3);
  });

  it("takes the mean off all alike when it is averaged, with the zero's own type A", () => {
    const zeroed = resultOf(subtractZero(readings, shorted, "mean", 15));
    expect((zeroed.values[58] ?? 0) - (zeroed.values[0] ?? 0)).toBeCloseTo(58 / 60, 9);
    expect(zeroed.zeroMicrovolt).toBeCloseTo(1.5, 9);
    // Four block means 0.25 µV apart: s = 0.3227, over √4.
    expect(zeroed.standardUncertainty).toBeCloseTo(0.16137, 4);
  });

  it("refuses without readings, without a zero, and a zero too short to tell its scatter", () => {
    expect(problemOf(subtractZero({ seconds: [], values: [] }, shorted, "mean", 15))).toBe("too-few");
    expect(problemOf(subtractZero(readings, { seconds: [], values: [] }, "mean", 15))).toBe("too-few");
    expect(problemOf(subtractZero(readings, shorted, "mean", 30))).toBe("too-few");
  });
});
