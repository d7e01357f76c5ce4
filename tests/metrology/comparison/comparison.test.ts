import { describe, expect, it } from "vitest";
import { averagePolarity } from "@/lib/metrology/comparison/average-polarity";
import { emfAtNominal } from "@/lib/metrology/comparison/emf-at-nominal";
import { interpolate } from "@/lib/metrology/comparison/interpolate";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";

describe("averagePolarity", () => {
  it("is the plain mean when the leads were not reversed", () => {
    const mean = averagePolarity({ seconds: [0, 10, 20], microvolts: [5, 6, 7], polarity: [1, 1, 1] });
    expect(mean).toEqual({
      ok: true,
      value: { microvolt: 6, seconds: 10, slopeMicrovoltPerSecond: 0.1, forward: 3, reversed: 0 },
    });
  });

  it("takes out a parasitic emf that does not reverse", () => {
    const parasitic = 1.7;
    const mean = averagePolarity({
      seconds: [0, 1, 2, 3],
      microvolts: [1000 + parasitic, -1000 + parasitic, 1000 + parasitic, -1000 + parasitic],
      polarity: [1, -1, 1, -1],
    });
    expect(mean.ok && mean.value.microvolt).toBeCloseTo(1000, 10);
  });

  it("takes it out also when one polarity was read more often", () => {
    const mean = averagePolarity({
      seconds: [0, 1, 2],
      microvolts: [1002, -998, 1002],
      polarity: [1, -1, 1],
    });
    expect(mean.ok && mean.value).toMatchObject({ microvolt: 1000, forward: 2, reversed: 1 });
  });

  it("does not take a parasitic emf for a drift when all forward readings come first", () => {
    const mean = averagePolarity({
      seconds: [0, 1, 2, 3],
      microvolts: [1005, 1005, -995, -995],
      polarity: [1, 1, -1, -1],
    });
    expect(mean.ok && mean.value).toMatchObject({
      microvolt: 1000,
      slopeMicrovoltPerSecond: 0,
      seconds: 1.5,
    });
  });

  it("finds a drift in both polarities alike", () => {
    const at = [0, 30, 60, 90, 120, 150];
    const mean = averagePolarity({
      seconds: at,
      microvolts: at.map((t, i) => (i % 2 ? -1 : 1) * (500 + 0.02 * t) + 3),
      polarity: at.map((_, i) => (i % 2 ? -1 : 1)),
    });
    expect(mean.ok && mean.value.slopeMicrovoltPerSecond).toBeCloseTo(0.02, 12);
  });

  it("has no slope from one moment, and no mean from nothing", () => {
    const one = averagePolarity({ seconds: [5], microvolts: [7], polarity: [-1] });
    expect(one.ok && one.value).toMatchObject({ microvolt: -7, slopeMicrovoltPerSecond: 0 });
    expect(averagePolarity({ seconds: [], microvolts: [], polarity: [] }).ok).toBe(false);
  });

  it("refuses a reading that is not a number", () => {
    const mean = averagePolarity({ seconds: [0, 1], microvolts: [1, Number.NaN], polarity: [1, 1] });
    expect(mean.ok).toBe(false);
    if (!mean.ok) expect(mean.problem.kind).toBe("not-finite");
  });
});

describe("interpolate", () => {
  const nodes = [
    { x: 300, y: -2 },
    { x: 600, y: 4 },
    { x: 1100, y: 4 },
  ];

  it.each([
    [300, -2, 0],
    [450, 1, 0.02],
    [600, 4, 0],
    [1000, 4, 0],
    [200, -2, 0],
    [2000, 4, 0],
  ])("at %d: %d", (x, value, slope) => {
    const result = interpolate(nodes, x);
    expect(result.value).toBeCloseTo(value, 12);
    expect(result.slope).toBeCloseTo(slope, 12);
  });

  it("of one node is constant, of none zero", () => {
    expect(interpolate([{ x: 1000, y: -8.75 }], 400)).toEqual({ value: -8.75, slope: 0 });
    expect(interpolate([], 400)).toEqual({ value: 0, slope: 0 });
  });
});

describe("emfAtNominal", () => {
  it("has the sign of EA-4/02 S5: nominal minus furnace", () => {
    expect(emfAtNominal(36248, 1000 - 1000.5, 1 / 0.026)).toBeCloseTo(36228.77, 2);
  });

  it("leaves out less than 0.14 µV for type K carried over 5 °C at 1000 °C", () => {
    const value = (t: number): number => {
      const result = emf(referenceFunctions.K, t);
      return result.ok ? result.value : Number.NaN;
    };
    const slope = 38.98137;
    for (const off of [5, -5]) {
      expect(Math.abs(emfAtNominal(value(1000 + off), -off, slope) - value(1000))).toBeLessThan(0.14);
    }
  });
});
