import { describe, expect, it } from "vitest";
import { type StabilityInput, stabilityOverTime } from "@/lib/metrology/uniformity/stability-over-time";
import { problemOf, resultOf } from "../result-of";

const record = (celsius: (minute: number) => number): StabilityInput => ({
  readings: Array.from({ length: 61 }, (_, minutes) => ({ minutes, celsius: celsius(minutes) })),
  windowMinutes: 10,
  meterCelsius: 0,
});

describe("stabilityOverTime", () => {
  it("gives a steady drift as its change over the window, and nothing about its line", () => {
    const result = resultOf(stabilityOverTime(record((minute) => 1000 - 0.004 * minute)));
    expect(result.windows).toBe(51);
    expect(result.changeCelsius).toBeCloseTo(0.04, 9);
    expect(result.peakToPeakCelsius).toBeCloseTo(0, 9);
    expect(result.halfWidthCelsius).toBeCloseTo(0.02, 9);
    expect(result.standardUncertainty).toBeCloseTo(0, 9);
  });

  it("finds the worst window, wherever it is", () => {
    const settling = resultOf(stabilityOverTime(record((minute) => 1000 - Math.exp(-minute / 20))));
    expect(settling.changeFromMinutes).toBe(0);
    const knocked = resultOf(stabilityOverTime(record((minute) => (minute === 45 ? 1000.5 : 1000))));
    expect(knocked.peakToPeakFromMinutes).toBeGreaterThanOrEqual(35);
    expect(knocked.peakToPeakCelsius).toBeGreaterThan(0.45);
  });

  it("does not divide by √n: scatter at both ends of the window, with the meter", () => {
    const swinging = record((minute) => 1000 + (minute % 2 === 0 ? 0.03 : -0.03));
    const result = resultOf(stabilityOverTime({ ...swinging, meterCelsius: 0.04 }));
    // Eleven readings of ±0.03 about a level line at their mean of 0.03/11, ν = 11 − 2.
    const scatter = Math.sqrt((11 * 0.03 ** 2 - 11 * (0.03 / 11) ** 2) / 9);
    expect(result.standardUncertainty).toBeCloseTo(Math.sqrt((scatter ** 2 + 0.04 ** 2) / 2), 9);
    expect(result.peakToPeakCelsius).toBeCloseTo(0.06, 2);
  });

  it("refuses a record that holds no full window", () => {
    const good = record(() => 1000);
    const refusedBy = (change: Partial<StabilityInput>) =>
      problemOf(stabilityOverTime({ ...good, ...change }));
    expect(refusedBy({ readings: [] })).toBe("too-few");
    expect(refusedBy({ windowMinutes: 61 })).toBe("too-few");
    expect(refusedBy({ windowMinutes: 3 })).toBe("too-few");
    expect(refusedBy({ windowMinutes: 0.5 })).toBe("too-few");
    expect(refusedBy({ windowMinutes: 0 })).toBe("not-applicable");
    expect(refusedBy({ meterCelsius: -1 })).toBe("not-applicable");
    expect(refusedBy({ readings: [...good.readings].reverse() })).toBe("not-applicable");
    expect(refusedBy({ windowMinutes: Number.POSITIVE_INFINITY })).toBe("not-finite");
  });
});
