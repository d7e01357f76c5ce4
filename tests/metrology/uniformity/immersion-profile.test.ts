import { describe, expect, it } from "vitest";
import { type ImmersionInput, immersionProfile } from "@/lib/metrology/uniformity/immersion-profile";
import { problemOf, resultOf } from "../result-of";

const depths: readonly (readonly [number, number])[] = [
  [250, -3],
  [300, -0.6],
  [325, -0.15],
  [350, 0],
  [375, -0.05],
  [400, -0.7],
];
const input: ImmersionInput = {
  readings: depths.map(([millimetre, celsius], i) => ({
    millimetre,
    probeCelsius: 1000 + celsius + 0.1 * i,
    monitorCelsius: 999 + 0.1 * i,
  })),
  limitCelsius: 0.2,
  meterCelsius: 0,
};

describe("immersionProfile", () => {
  it("finds the best depth and the depths about it that are within the limit", () => {
    const result = resultOf(immersionProfile(input));
    expect(result).toMatchObject({ bestMillimetre: 350, fromMillimetre: 325, toMillimetre: 375 });
    expect(result.halfDifferenceCelsius).toBeCloseTo(0.075, 9);
    expect(result.stepMillimetre).toBe(25);
    expect(result.depths.map(({ isWithin }) => isWithin)).toEqual([false, false, true, true, true, false]);
    expect(result.depths[0]?.celsius).toBeCloseTo(-3, 9);
  });

  it("stops where the survey stops", () => {
    const all = resultOf(immersionProfile({ ...input, limitCelsius: 5 }));
    expect(all).toMatchObject({ fromMillimetre: 250, toMillimetre: 400 });
  });

  it("takes the disagreement of a depth's own visits, and the meter, into u", () => {
    const again = { millimetre: 350, probeCelsius: 1000.06, monitorCelsius: 999 };
    const result = resultOf(
      immersionProfile({ ...input, readings: [...input.readings, again], meterCelsius: 0.01 }),
    );
    expect(result.standardUncertainty).toBeCloseTo(Math.sqrt((1e-4 + 0.06 ** 2 / 12) / 2), 9);
  });

  it("refuses what says nothing", () => {
    const refusedBy = (change: Partial<ImmersionInput>) =>
      problemOf(immersionProfile({ ...input, ...change }));
    expect(refusedBy({ readings: input.readings.slice(0, 2) })).toBe("too-few");
    expect(refusedBy({ limitCelsius: 0.01 })).toBe("too-few");
    expect(refusedBy({ limitCelsius: 0 })).toBe("not-applicable");
    expect(refusedBy({ meterCelsius: -1 })).toBe("not-applicable");
    expect(refusedBy({ limitCelsius: Number.NaN })).toBe("not-finite");
  });
});
