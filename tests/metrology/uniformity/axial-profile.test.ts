import { describe, expect, it } from "vitest";
import { type AxialInput, axialProfile, type ProfileReading } from "@/lib/metrology/uniformity/axial-profile";
import { problemOf, resultOf } from "../result-of";

/** A made profile: 0 at 0 mm, falling with the square of the distance, half range over ±30 mm 0.225 °C. */
const shape = (millimetre: number): number => -0.0005 * millimetre * millimetre;
const there = [-30, -15, 0, 15, 30];
const stops = [...there, ...[...there].reverse()];

const survey = (drift: (moment: number) => number, noise: readonly number[] = []): ProfileReading[] =>
  stops.map((millimetre, moment) => ({
    millimetre,
    moment,
    // The furnace itself drifts by 0.3 °C a stop: monitor and probe both see it.
    probeCelsius: 1000 + 0.3 * moment + shape(millimetre) + drift(moment) + (noise[moment] ?? 0),
    monitorCelsius: 998.5 + 0.3 * moment,
  }));

const input = (readings: readonly ProfileReading[]): AxialInput => ({
  readings,
  fromMillimetre: -30,
  toMillimetre: 30,
  probeInhomogeneityCelsius: 0,
  meterCelsius: 0,
});

describe("axialProfile", () => {
  it("gives the profile that was put in, whatever the furnace drifts", () => {
    const profile = resultOf(axialProfile(input(survey(() => 0))));
    expect(profile.halfRangeCelsius).toBeCloseTo(0.225, 9);
    expect(profile.fullRangeCelsius).toBeCloseTo(0.45, 9);
    expect(profile.lengthMillimetre).toBe(60);
    expect(profile.standardUncertainty).toBeCloseTo(0, 9);
    expect(profile.degreesOfFreedom).toBe(10 - 5 - 1);
    const celsius = profile.points.map((point) => point.celsius);
    expect(celsius.reduce((a, b) => a + b, 0)).toBeCloseTo(0, 9);
    expect((celsius[2] as number) - (celsius[0] as number)).toBeCloseTo(0.45, 9);
    expect(profile.points.map(({ visits }) => visits)).toEqual([2, 2, 2, 2, 2]);
  });

  it("takes out a line of drift between probe and monitor, and says how much may still be hidden", () => {
    const profile = resultOf(axialProfile(input(survey((moment) => 0.02 * moment))));
    expect(profile.halfRangeCelsius).toBeCloseTo(0.225, 9);
    expect(profile.driftCelsius).toBeCloseTo(0.18, 9);
    expect(profile.parts.driftResidue).toBeCloseTo(0.18 / 4 / Math.sqrt(3), 9);
    expect(profile.standardUncertainty).toBeCloseTo(profile.parts.driftResidue, 9);
  });

  it("covers what an exponential drift hides by its even part, up to four time constants", () => {
    for (const constants of [0.5, 1, 2, 4]) {
      const approach = (moment: number) => 0.4 * Math.exp((-constants * moment) / 9);
      const profile = resultOf(axialProfile(input(survey(approach))));
      const hidden = Math.abs(profile.halfRangeCelsius - 0.225);
      expect(hidden).toBeGreaterThan(0);
      expect(hidden).toBeLessThanOrEqual(Math.sqrt(3) * profile.parts.driftResidue);
    }
  });

  it("finds the repeatability from what the visits of a place leave", () => {
    // ±0.01 °C, antisymmetric about the turn in pairs: neither profile nor drift can take it up.
    const noise = [0.01, -0.02, 0.01, 0, 0, 0, 0, -0.01, 0.02, -0.01];
    const profile = resultOf(axialProfile(input(survey(() => 0, noise))));
    expect(profile.residualDeviation).toBeCloseTo(Math.sqrt((4 * 1e-4 + 8e-4 - 0) / 4), 3);
    // Two visits each at 0 and ±30 mm: u of a place s/√2, of half the difference of two places s/2.
    expect(profile.parts.repeatability).toBeCloseTo(profile.residualDeviation / 2, 2);
  });

  it("adds the meter and the probe's inhomogeneity as independent at the two extremes", () => {
    const profile = resultOf(
      axialProfile({ ...input(survey(() => 0)), probeInhomogeneityCelsius: 0.06, meterCelsius: 0.02 }),
    );
    expect(profile.parts.probeInhomogeneity).toBeCloseTo(0.06 / Math.sqrt(6), 12);
    expect(profile.parts.meter).toBeCloseTo(0.02 / Math.SQRT2, 12);
    expect(profile.standardUncertainty).toBeCloseTo(Math.hypot(0.06 / Math.sqrt(6), 0.02 / Math.SQRT2), 9);
  });

  it("states the figure over the length asked for, and shows the rest of the survey beside it", () => {
    const profile = resultOf(
      axialProfile({ ...input(survey(() => 0)), fromMillimetre: -15, toMillimetre: 15 }),
    );
    expect(profile.halfRangeCelsius).toBeCloseTo(0.05625, 9);
    expect(profile.lengthMillimetre).toBe(30);
    expect(profile.points.map(({ isInside }) => isInside)).toEqual([false, true, true, true, false]);
  });

  it("refuses what says nothing", () => {
    const good = input(survey(() => 0));
    const refusedBy = (change: Partial<AxialInput>) => problemOf(axialProfile({ ...good, ...change }));
    expect(refusedBy({ readings: good.readings.slice(0, 5) })).toBe("too-few");
    expect(refusedBy({ meterCelsius: Number.NaN })).toBe("not-finite");
    expect(refusedBy({ fromMillimetre: 30 })).toBe("not-applicable");
    expect(refusedBy({ meterCelsius: -1 })).toBe("not-applicable");
    expect(refusedBy({ probeInhomogeneityCelsius: -1 })).toBe("not-applicable");
    expect(refusedBy({ readings: [...good.readings].reverse() })).toBe("not-applicable");
    expect(refusedBy({ fromMillimetre: -31 })).toBe("outside-range");
    expect(refusedBy({ toMillimetre: 31 })).toBe("outside-range");
    expect(refusedBy({ fromMillimetre: -5, toMillimetre: 20 })).toBe("too-few");
    // Each place read twice at all but one moment: profile and drift cannot be told apart.
    const atOnce = [-30, 0, 30].flatMap((millimetre, i) =>
      [100 * i, 100 * i + 1e-10].map((moment) => ({
        ...(good.readings[0] as ProfileReading),
        millimetre,
        moment,
      })),
    );
    expect(refusedBy({ readings: atOnce })).toBe("no-solution");
    const onceOver = [-30, -20, -10, 0, 10, 20, 30].map((millimetre, moment) => ({
      ...(good.readings[0] as ProfileReading),
      millimetre,
      moment,
    }));
    expect(refusedBy({ readings: onceOver })).toBe("too-few");
    const oneAgain = [...onceOver, { ...(onceOver[6] as ProfileReading), moment: 7 }];
    expect(refusedBy({ readings: oneAgain })).toBe("too-few");
  });
});
