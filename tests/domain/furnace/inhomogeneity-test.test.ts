import { describe, expect, it } from "vitest";
import {
  evaluateInhomogeneity,
  InhomogeneityReadings,
  inhomogeneityInput,
} from "@/lib/domain/furnace/inhomogeneity-test";

const scan: InhomogeneityReadings = {
  method: "scan",
  celsius: 250,
  outsideCelsius: 20,
  meterMicrovolt: 0.2,
  medium: "Salt bath",
  rows: [10151, 10153, 10157, 10154, 10150].map((microvolt, i) => ({
    millimetre: 100 + 30 * i,
    microvolt,
    monitorCelsius: 250,
  })),
};

const evaluated = (readings: InhomogeneityReadings) => {
  const found = evaluateInhomogeneity("K", readings);
  if (!found.ok) throw new Error(JSON.stringify(found.refusal));
  return found.value;
};

describe("an inhomogeneity test", () => {
  it("is half of Emax − Emin over E(250 °C) − E(20 °C) of the type", () => {
    expect(InhomogeneityReadings.parse(scan)).toEqual(scan);
    // NIST Monograph 175, type K: 10.153 mV at 250 °C and 0.798 mV at 20 °C.
    expect(evaluated(scan).relativeHalfWidth).toBeCloseTo(3.5 / (10153 - 798), 6);
    expect(evaluated(scan).scannedMillimetre).toBe(120);
  });

  it("of two immersions is half their difference, less what the bath did", () => {
    const rows = [
      { millimetre: 300, microvolt: 10153, monitorCelsius: 250 },
      { millimetre: 270, microvolt: 10149, monitorCelsius: 249.9 },
    ];
    const found = evaluated({ ...scan, method: "two-immersions", rows });
    // The bath fell by 0.1 °C, which is 4.1 µV of type K there: nothing of the difference is left.
    expect(found.halfWidthMicrovolt).toBeLessThan(0.1);
    expect(found.method).toBe("two-immersions");
  });

  it("is refused at its field", () => {
    const refused = (change: Partial<InhomogeneityReadings>) => {
      const found = evaluateInhomogeneity("K", { ...scan, ...change });
      return found.ok ? [] : Object.keys(found.refusal.fields ?? {});
    };
    expect(refused({ celsius: 1500 })).toEqual(["readings.celsius"]);
    expect(refused({ rows: scan.rows.slice(0, 3) })).toEqual(["readings.rows"]);
    const wrong = scan.rows.map((row, i) => (i === 1 ? { ...row, monitorCelsius: 25 } : row));
    expect(refused({ rows: wrong })).toEqual(["readings.rows.1.monitorCelsius"]);
    const millivolt = scan.rows.map((row, i) => (i === 4 ? { ...row, microvolt: 10.15 } : row));
    expect(refused({ rows: millivolt })).toEqual(["readings.rows.4.microvolt"]);
  });

  it("stands in the budget with the test and its day, relative to the emf at calibration", () => {
    const test = { performedOn: "2026-03-01", celsius: 250, evaluation: evaluated(scan) };
    const input = inhomogeneityInput(test);
    expect(input).toMatchObject({
      kind: "rectangular",
      unit: "relative",
      source: "inhomogeneity test of 2026-03-01 at 250 °C, moved through the gradient over 120 mm",
    });
    const flat = { ...test.evaluation, relativeHalfWidth: 0, standardUncertainty: 0 };
    expect(inhomogeneityInput({ ...test, evaluation: flat })).toMatchObject({ kind: "zero" });
    const two = { ...test.evaluation, method: "two-immersions" } as const;
    expect(inhomogeneityInput({ ...test, evaluation: two })).toMatchObject({
      source: expect.stringContaining("two immersions 120 mm apart"),
    });
  });
});
