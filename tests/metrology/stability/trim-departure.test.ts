import { describe, expect, it } from "vitest";
import { quantile } from "@/lib/metrology/number/quantile";
import { findDwell } from "@/lib/metrology/stability/find-dwell";
import { departing } from "@/lib/metrology/stability/trim-departure";

describe("the readings of a ramp at the end of a dwell", () => {
  const noise = [0.01, -0.02, 0.015, -0.01, 0.02, -0.015, 0.005, -0.005];
  const rest = Array.from({ length: 60 }, (_, i) => 900 + (noise[i % noise.length] ?? 0));

  it("are counted, with the scan in which the ramp began", () => {
    expect(departing([...rest, 901.5, 903.2], 60)).toBe(3);
  });

  it("are none where the furnace only creeps", () => {
    expect(
      departing(
        Array.from({ length: 60 }, (_, i) => 900 + i * 0.01),
        60,
      ),
    ).toBe(0);
    expect(departing(rest, 60)).toBe(0);
  });

  it("do not belong to the dwell that is found", () => {
    const seconds = Array.from({ length: 130 }, (_, i) => i * 10);
    // At rest up to 1000 s, then 10 °C a minute.
    const celsius = seconds.map(
      (t) => 900 + (noise[(t / 10) % noise.length] ?? 0) + Math.max(0, (t - 1000) / 6),
    );
    const dwell = findDwell([{ id: "R", seconds, celsius }], 900);
    expect(dwell?.toSeconds).toBeLessThanOrEqual(1000);
    expect(dwell?.toSeconds).toBeGreaterThanOrEqual(980);
  });

  it("stay where the record ends at the setpoint: nobody left it", () => {
    const seconds = rest.map((_, i) => i * 10);
    expect(findDwell([{ id: "R", seconds, celsius: rest }], 900)?.toSeconds).toBe(590);
  });
});

describe("quantile", () => {
  it("interpolates between order statistics", () => {
    expect(quantile([4, 1, 3, 2], 0.5)).toBe(2.5);
    expect(quantile([1, 2, 3, 4, 5], 0.25)).toBe(2);
    expect(quantile([7], 0.9)).toBe(7);
    expect(quantile([], 0.5)).toBeNaN();
  });
});
