import { describe, expect, it } from "vitest";
import { type CallendarVanDusen, iec60751 } from "@/lib/metrology/platinum/callendar-van-dusen";
import { platinumResistance, resistanceAndSlope } from "@/lib/metrology/platinum/platinum-resistance";
import { platinumTemperature } from "@/lib/metrology/platinum/platinum-temperature";
import { type PlatinumClass, platinumTolerance } from "@/lib/metrology/platinum/platinum-tolerance";
import { resistancesToFourDecimals } from "../vectors/platinum-recomputed";

/** Coefficients as a calibration certificate might give them; invented. */
const calibrated: CallendarVanDusen = { zeroOhm: 100.012, a: 3.9079e-3, b: -5.78e-7, c: -4.2e-12 };

describe("IEC 60751", () => {
  it.each(resistancesToFourDecimals)("R at %d °C is %s Ω, and back", (celsius, ohm) => {
    const result = platinumResistance(iec60751, celsius);
    expect(result.ok && result.value.toFixed(4)).toBe(ohm);
    const back = platinumTemperature(iec60751, Number(ohm));
    // Half the last digit is 5e-5 Ω: 1.7e-4 °C at 850 °C, 1.2e-4 °C at −200 °C.
    const beyond = celsius === -200 || celsius === 850;
    expect(back.ok || beyond).toBe(true);
    if (back.ok) expect(Math.abs(back.value - celsius)).toBeLessThan(2e-4);
  });

  it.each([
    ["the standard's", iec60751],
    ["a certificate's", calibrated],
  ] as const)("comes back within 1e-9 °C with %s coefficients, from −200 °C to 850 °C", (_name, sensor) => {
    const places = [-200, -199.999, -1e-9, 0, 1e-9, 849.999, 850];
    for (let t = -200; t <= 850; t += 0.31) places.push(t);
    for (const t of places) {
      const ohm = platinumResistance(sensor, t);
      const back = platinumTemperature(sensor, ohm.ok ? ohm.value : Number.NaN);
      expect(back.ok && Math.abs(back.value - t), `${t} °C`).toBeLessThan(1e-9);
    }
  });

  it("is not the root of the square below 0 °C", () => {
    const ohm = resistanceAndSlope(iec60751, -200).value;
    const { a, b } = iec60751;
    const root = (-a + Math.sqrt(a * a - 4 * b * (1 - ohm / 100))) / (2 * b);
    expect(Math.abs(root + 200)).toBeGreaterThan(1);
    const back = platinumTemperature(iec60751, ohm);
    expect(back.ok && back.value).toBeCloseTo(-200, 9);
  });

  it("has the slope of its value", () => {
    for (const t of [-150, -20, -1, 1, 300, 800]) {
      const rise =
        resistanceAndSlope(calibrated, t + 0.01).value - resistanceAndSlope(calibrated, t - 0.01).value;
      expect(resistanceAndSlope(calibrated, t).slope).toBeCloseTo(rise / 0.02, 7);
    }
  });

  it("refuses what it cannot answer, by name", () => {
    const cases = [
      [platinumResistance(iec60751, Number.NaN), "not-finite"],
      [platinumResistance(iec60751, -200.1), "outside-range"],
      [platinumResistance(iec60751, 850.1), "outside-range"],
      [platinumTemperature(iec60751, Number.POSITIVE_INFINITY), "not-finite"],
      [platinumTemperature(iec60751, 18.5), "outside-range"],
      [platinumTemperature(iec60751, 391), "outside-range"],
      [platinumTemperature({ ...iec60751, zeroOhm: Number.NaN }, 100), "no-solution"],
      [platinumTemperature({ ...iec60751, b: -5e-6 }, 100), "no-solution"],
      [platinumTemperature({ ...iec60751, a: -3.9e-3 }, 100), "no-solution"],
    ] as const;
    for (const [result, kind] of cases) expect(!result.ok && result.problem.kind).toBe(kind);
  });
});

describe("tolerance classes of IEC 60751 (from memory)", () => {
  it.each([
    ["AA", 100, 0.27],
    ["A", -100, 0.35],
    ["B", 0, 0.3],
    ["B", 600, 3.3],
    ["C", 300, 3.6],
  ] as const)("class %s at %d °C is ±%d °C", (toleranceClass, celsius, half) => {
    const result = platinumTolerance(toleranceClass, "wire", celsius);
    expect(result.ok && result.value).toBeCloseTo(half, 12);
  });

  it("end where the class ends, sooner for films", () => {
    const ends: readonly (readonly [PlatinumClass, "wire" | "film", number, number])[] = [
      ["AA", "wire", -50, 250],
      ["AA", "film", 0, 150],
      ["A", "wire", -100, 450],
      ["A", "film", -30, 300],
      ["B", "wire", -196, 600],
      ["B", "film", -50, 500],
      ["C", "wire", -196, 600],
      ["C", "film", -50, 600],
    ];
    for (const [toleranceClass, element, from, to] of ends) {
      for (const t of [from, to]) expect(platinumTolerance(toleranceClass, element, t).ok).toBe(true);
      for (const t of [from - 0.01, to + 0.01]) {
        const result = platinumTolerance(toleranceClass, element, t);
        expect(!result.ok && result.problem.kind).toBe("outside-range");
      }
    }
    const none = platinumTolerance("A", "wire", Number.NaN);
    expect(!none.ok && none.problem.kind).toBe("not-finite");
  });
});
