import { describe, expect, it } from "vitest";
import {
  type CalibrationRecord,
  driftFromHistory,
  predictDrift,
} from "@/lib/metrology/standard/drift-from-history";
import { expectedDrift } from "@/lib/metrology/standard/expected-drift";
import { problemOf, resultOf } from "../result-of";

const rates = { perYear: { rate: -0.05, halfWidth: 0.03 }, perHour: { rate: -1e-3, halfWidth: 4e-4 } };

describe("expectedDrift", () => {
  it("goes with the date and with the hours of use, and adds the half-widths of both", () => {
    const drift = resultOf(expectedDrift(rates, { years: 2, hours: 100 }));
    expect(drift.expected).toBeCloseTo(-0.2, 12);
    expect(drift.halfWidth).toBeCloseTo(0.1, 12);
    expect(drift.uncorrectedHalfWidth).toBeCloseTo(0.3, 12);
    expect(resultOf(expectedDrift(rates, { years: 0, hours: 0 })).uncorrectedHalfWidth).toBe(0);
  });

  it("refuses a time before the calibration, a width below zero, and what is no number", () => {
    expect(problemOf(expectedDrift(rates, { years: -1, hours: 0 }))).toBe("outside-range");
    expect(problemOf(expectedDrift(rates, { years: 1, hours: -1 }))).toBe("outside-range");
    expect(
      problemOf(expectedDrift({ ...rates, perYear: { rate: 0, halfWidth: -1 } }, { years: 1, hours: 1 })),
    ).toBe("outside-range");
    expect(
      problemOf(expectedDrift({ ...rates, perHour: { rate: 0, halfWidth: -1 } }, { years: 1, hours: 1 })),
    ).toBe("outside-range");
    expect(problemOf(expectedDrift(rates, { years: Number.NaN, hours: 1 }))).toBe("not-finite");
  });
});

const record = (years: number, hours: number, value: number): CalibrationRecord => ({
  years,
  hours,
  value,
  standardUncertainty: 0.1,
});

describe("driftFromHistory", () => {
  it("of two calibrations is their difference over their distance, with its uncertainty", () => {
    const fit = resultOf(driftFromHistory([record(0, 0, 1), record(2, 50, 0.6)], "years"));
    expect(fit.perYear).toBeCloseTo(-0.2, 12);
    expect(fit.perHour).toBe(0);
    expect(Math.sqrt(fit.rateCovariance[0]?.[0] ?? 0)).toBeCloseTo((0.1 * Math.SQRT2) / 2, 12);
    expect(fit).toMatchObject({ calibrations: 2, degreesOfFreedom: 0, scatterFactor: 1 });
    const after = resultOf(predictDrift(fit, { years: 1, hours: 0 }, 0.95));
    expect(after.expected).toBeCloseTo(-0.2, 12);
    expect(after.standardUncertainty).toBeCloseTo(0.0707106781, 9);
    expect(after.halfWidth / after.standardUncertainty).toBeCloseTo(1.959964, 5);
  });

  it("tells years from hours where the use was uneven", () => {
    const history = [
      [0, 0],
      [1, 300],
      [2, 320],
      [3, 800],
    ].map(([years = 0, hours = 0]) => record(years, hours, 5 - 0.05 * years - 1e-3 * hours));
    const fit = resultOf(driftFromHistory(history, "years-and-hours"));
    expect(fit.perYear).toBeCloseTo(-0.05, 10);
    expect(fit.perHour).toBeCloseTo(-1e-3, 12);
    const after = resultOf(predictDrift(fit, { years: 1, hours: 200 }, 0.95));
    expect(after.expected).toBeCloseTo(-0.25, 10);
    expect(after.standardUncertainty).toBeGreaterThan(0);
    const hours = resultOf(driftFromHistory(history, "hours"));
    expect(hours.perYear).toBe(0);
    expect(hours.perHour).toBeLessThan(-1e-3);
  });

  it("widens its interval, by Student's t, when the standard wanders more than its calibrations are uncertain", () => {
    const wandering = [0, 1, 2, 3, 4].map((years) => record(years, 0, years % 2 ? 0.5 : -0.5));
    const fit = resultOf(driftFromHistory(wandering, "years"));
    expect(fit.scatterFactor).toBeGreaterThan(4);
    const after = resultOf(predictDrift(fit, { years: 0, hours: 0 }, 0.95));
    // Even the day after the calibration the wander is there.
    expect(after.standardUncertainty).toBeGreaterThan(0.4);
    expect(after.halfWidth / after.standardUncertainty).toBeCloseTo(3.182, 3);
    const steady = [0, 1, 2, 3, 4].map((years) => record(years, 0, 0.01 * years));
    expect(resultOf(driftFromHistory(steady, "years")).scatterFactor).toBe(1);
  });

  it("covers the next value of a drifting standard about as often as it says", () => {
    let state = 12345;
    const uniform = (): number => {
      state = (state * 16807) % 2147483647;
      return state / 2147483647;
    };
    const normal = (): number => Array.from({ length: 12 }, uniform).reduce((a, b) => a + b) - 6;
    let inside = 0;
    for (let n = 0; n < 2000; n += 1) {
      const history = [0, 1, 2, 3].map((years) => record(years, 0, -0.05 * years + 0.1 * normal()));
      const after = resultOf(
        predictDrift(resultOf(driftFromHistory(history, "years")), { years: 2, hours: 0 }, 0.95),
      );
      if (Math.abs(after.expected + 0.1) <= after.halfWidth) inside += 1;
    }
    expect(inside / 2000).toBeGreaterThan(0.94);
  });

  it("refuses histories that tell nothing", () => {
    expect(problemOf(driftFromHistory([record(0, 0, 1)], "years"))).toBe("too-few");
    expect(problemOf(driftFromHistory([record(0, 0, 1), record(1, 9, 1)], "years-and-hours"))).toBe(
      "too-few",
    );
    expect(problemOf(driftFromHistory([record(1, 0, 1), record(1, 9, 1)], "years"))).toBe("no-solution");
    const calendar = [0, 1, 2, 3].map((years) => record(years, 250 * years, 1));
    expect(problemOf(driftFromHistory(calendar, "years-and-hours"))).toBe("no-solution");
    const sure = { ...record(1, 1, 1), standardUncertainty: 0 };
    expect(problemOf(driftFromHistory([record(0, 0, 1), sure], "years"))).toBe("not-applicable");
    expect(problemOf(driftFromHistory([record(0, 0, 1), record(1, 1, Number.NaN)], "years"))).toBe(
      "not-finite",
    );
  });

  it("predicts nothing for a time or a probability that is none", () => {
    const fit = resultOf(driftFromHistory([record(0, 0, 1), record(2, 50, 0.6)], "hours"));
    expect(problemOf(predictDrift(fit, { years: Number.NaN, hours: 0 }, 0.95))).toBe("not-finite");
    expect(problemOf(predictDrift(fit, { years: 0, hours: Number.NaN }, 0.95))).toBe("not-finite");
    expect(problemOf(predictDrift(fit, { years: -1, hours: 0 }, 0.95))).toBe("outside-range");
    expect(problemOf(predictDrift(fit, { years: 0, hours: -1 }, 0.95))).toBe("outside-range");
    expect(problemOf(predictDrift(fit, { years: 0, hours: 0 }, 1))).toBe("outside-range");
    expect(problemOf(predictDrift(fit, { years: 0, hours: 0 }, 0))).toBe("outside-range");
  });
});
