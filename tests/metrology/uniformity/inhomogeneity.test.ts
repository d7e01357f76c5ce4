import { describe, expect, it } from "vitest";
import {
  type InhomogeneityScan,
  inhomogeneityOfScan,
} from "@/lib/metrology/uniformity/inhomogeneity-of-scan";
import {
  inhomogeneityOfTwoImmersions,
  type TwoImmersions,
} from "@/lib/metrology/uniformity/inhomogeneity-of-two-immersions";
import { widenedHalfWidth } from "@/lib/metrology/uniformity/widened-half-width";
import { problemOf, resultOf } from "../result-of";

const scan: InhomogeneityScan = {
  // A bath that warms by 0.1 °C a stop, read through 40 µV/°C.
  readings: [10000, 10003, 10008, 10004, 9998].map((microvolt, i) => ({
    millimetre: 100 + 25 * i,
    microvolt: microvolt + 4 * i,
    monitorCelsius: 250 + 0.1 * i,
  })),
  spanMicrovolt: 10000,
  microvoltPerCelsius: 40,
  meterMicrovolt: 0,
};

describe("inhomogeneityOfScan", () => {
  it("is half of Emax − Emin over the emf of the gradient, without what the bath did meanwhile", () => {
    const result = resultOf(inhomogeneityOfScan(scan));
    expect(result.halfWidthMicrovolt).toBeCloseTo(5, 9);
    expect(result.relativeHalfWidth).toBeCloseTo(0.0005, 12);
    expect(result.scannedMillimetre).toBe(100);
    expect(result.standardUncertainty).toBe(0);
    expect(resultOf(inhomogeneityOfScan({ ...scan, spanMicrovolt: -10000 })).relativeHalfWidth).toBeCloseTo(
      0.0005,
      12,
    );
  });

  it("takes visits of one depth into u, with the meter", () => {
    const again = { millimetre: 100, microvolt: 10006, monitorCelsius: 250 };
    const result = resultOf(
      inhomogeneityOfScan({ ...scan, readings: [...scan.readings, again], meterMicrovolt: 1 }),
    );
    expect(result.standardUncertainty).toBeCloseTo(Math.sqrt((1 + 36 / 12) / 2) / 10000, 12);
  });

  it("refuses what says nothing", () => {
    const refusedBy = (change: Partial<InhomogeneityScan>) =>
      problemOf(inhomogeneityOfScan({ ...scan, ...change }));
    expect(refusedBy({ readings: scan.readings.slice(0, 4) })).toBe("too-few");
    expect(refusedBy({ spanMicrovolt: 0 })).toBe("not-applicable");
    expect(refusedBy({ microvoltPerCelsius: 0 })).toBe("not-applicable");
    expect(refusedBy({ meterMicrovolt: -1 })).toBe("not-applicable");
    expect(refusedBy({ spanMicrovolt: Number.NaN })).toBe("not-finite");
  });
});

describe("inhomogeneityOfTwoImmersions", () => {
  const two: TwoImmersions = {
    first: { millimetre: 300, microvolt: 41000 },
    second: { millimetre: 270, microvolt: 40980 },
    spanMicrovolt: 40000,
    meterMicrovolt: 2,
  };

  it("is half the difference over the emf of the gradient", () => {
    const result = resultOf(inhomogeneityOfTwoImmersions(two));
    expect(result).toMatchObject({
      halfWidthMicrovolt: 10,
      relativeHalfWidth: 0.00025,
      scannedMillimetre: 30,
    });
    expect(result.standardUncertainty).toBeCloseTo(Math.SQRT2 / 40000, 12);
    expect(result.depths).toHaveLength(2);
  });

  it("refuses depths too close together, and numbers that are none", () => {
    const refusedBy = (change: Partial<TwoImmersions>) =>
      problemOf(inhomogeneityOfTwoImmersions({ ...two, ...change }));
    expect(refusedBy({ second: { millimetre: 281, microvolt: 40980 } })).toBe("too-few");
    expect(refusedBy({ spanMicrovolt: 0 })).toBe("not-applicable");
    expect(refusedBy({ meterMicrovolt: -1 })).toBe("not-applicable");
    expect(refusedBy({ meterMicrovolt: Number.NaN })).toBe("not-finite");
  });
});

describe("widenedHalfWidth", () => {
  it("is the rectangle whose u holds both the width and how well it is known", () => {
    expect(widenedHalfWidth(0.25, 0)).toBe(0.25);
    const widened = widenedHalfWidth(0.25, 0.05);
    expect(widened / Math.sqrt(3)).toBeCloseTo(Math.hypot(0.25 / Math.sqrt(3), 0.05), 12);
  });
});
