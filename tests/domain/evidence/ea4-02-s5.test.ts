import { describe, expect, it } from "vitest";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import s5 from "@/lib/domain/evidence/examples/ea4-02-s5.json";

/*
 * Source: EA-4/02, Evaluation of the Uncertainty of Measurement in Calibration, example S5, calibration of
 * a type N thermocouple at 1000 °C.
 *
 * What S5 does not prove: the certificates of its two type R references are not published, so their
 * deviations (−8.75 and −9.90 µV) are ours, chosen to give the published 1000.4 and 1000.6 °C: nothing is
 * shown about converting a reference's emf. The times of the readings are ours, and the published order is
 * symmetric, so nothing is shown about drift. S5 has no inhomogeneity, no voltmeter drift, no degrees of
 * freedom, its junction is at 0 °C, and its sensitivities are rounded.
 */

function evaluated(change: object = {}): MeasuredPoint {
  const outcome = evaluateEvidence({ ...s5, ...change });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  const [point] = outcome.evaluation.points;
  if (point?.state !== "measured") throw new Error("S5 is measured");
  return point;
}

const point = evaluated();

/** Key, effect as printed, half of its last printed digit. */
const temperatureRows = [
  ["reference.repeatability", 0.1, 0.005],
  ["reference.calibration", 0.15, 0.005],
  ["voltmeter.calibration@reference", 0.077, 0.0005],
  ["voltmeter.resolution@reference", 0.022, 0.0005],
  ["scanner.parasitic@reference", 0.089, 0.0005],
  ["junction@reference", -0.024, 0.0005],
  ["reference.drift", 0.173, 0.0005],
  ["furnace.uniformity", 0.577, 0.0005],
] as const;

const emfRows = [
  ["sensor.repeatability", 1.6, 0.005],
  ["voltmeter.calibration@sensor", 1.0, 0.005],
  ["voltmeter.resolution@sensor", 0.29, 0.005],
  ["scanner.parasitic@sensor", 1.15, 0.005],
  ["sensor.lead", 2.9, 0.05],
  ["junction@sensor", -1.48, 0.005],
  // Printed as 24.5; 0.641/0.026 is 24.65.
  ["furnace.temperature", 24.65, 0.01],
] as const;

describe("EA-4/02 example S5", () => {
  it("has the furnace at 1000.5 °C, from 1000.4 and 1000.6 °C", () => {
    expect(point.references.map(({ celsius }) => celsius.toFixed(1))).toEqual(["1000.4", "1000.6"]);
    expect(point.referenceCelsius).toBeCloseTo(1000.5, 3);
    expect(point.printed.referenceCelsius).toBe("1000.5");
  });

  it("averages the published readings", () => {
    expect(point.references.map(({ emfMicrovolt }) => emfMicrovolt)).toEqual([10502.5, 10504]);
    expect(point.indicatedMicrovolt).toBe(36248);
    expect(point.readings).toBe(4);
  });

  it.each(temperatureRows)("t_X budget: %s = %d °C", (key, printed, half) => {
    const line = point.temperatureBudget.contributions.find((c) => c.key === key);
    expect(Math.abs((line?.effect ?? Number.NaN) - printed)).toBeLessThanOrEqual(half);
  });

  it("has u(t_X) = 0.6409 °C", () => {
    expect(Math.abs(point.temperatureBudget.combined - 0.6409)).toBeLessThanOrEqual(0.0002);
  });

  it.each(emfRows)("V_X budget: %s = %d µV", (key, printed, half) => {
    const line = point.emfBudget.contributions.find((c) => c.key === key);
    expect(Math.abs((line?.effect ?? Number.NaN) - printed)).toBeLessThanOrEqual(half);
  });

  it("carries −0.5 °C, not +0.5: the published row has no sign, the published result has", () => {
    expect(point.carriedCelsius).toBeCloseTo(-0.5, 3);
    const line = point.emfBudget.contributions.find((c) => c.key === "furnace.temperature");
    expect(line?.estimate).toBe(point.carriedCelsius);
    expect(line?.sensitivity).toBeCloseTo(38.46, 2);
  });

  it("has V_X = 36 228.77 µV and u = 24.96 µV", () => {
    expect(Math.abs(point.emfAtNominalMicrovolt - 36228.77)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(point.combinedMicrovolt - 24.96)).toBeLessThanOrEqual(0.01);
    expect(point.coverageFactor).toBe(2);
    expect(point.degreesOfFreedom).toBeNull();
    expect(Math.abs(point.expandedMicrovolt - 49.92)).toBeLessThanOrEqual(0.01);
  });

  it("prints 36 230 ± 50 µV at one digit of U, as published", () => {
    expect([point.printed.emfMicrovolt, point.printed.expandedMicrovolt]).toEqual(["36\u202f230", "50"]);
    expect(point.printed.coverageFactor).toBe("2.00");
    expect(point.printed.degreesOfFreedom).toBe("∞");
  });

  it("prints 36 229 ± 50 µV at two", () => {
    const { printed } = evaluated({ rounding: { uncertaintyDigits: 2 } });
    expect([printed.emfMicrovolt, printed.expandedMicrovolt]).toEqual(["36\u202f229", "50"]);
    expect([printed.errorCelsius, printed.correctionCelsius, printed.expandedCelsius]).toEqual([
      "\u22120.7",
      "0.7",
      "1.3",
    ]);
  });

  it("with sensitivities from the reference functions has u = 25.04 µV", () => {
    expect(evaluated({ sensitivities: "reference-functions" }).combinedMicrovolt).toBeCloseTo(25.04, 2);
  });

  it("keeps lines that S5 does not have, at zero and with the reason", () => {
    const added = [...point.temperatureBudget.contributions, ...point.emfBudget.contributions].filter(
      ({ distribution }) => distribution === "none",
    );
    expect(added.map(({ key }) => key)).toEqual([
      "voltmeter.drift@reference",
      "heater.pickup@reference",
      "junction.spread@reference",
      "reference.interpolation",
      "reference.inhomogeneity",
      "furnace.axial",
      "furnace.radial",
      "furnace.gradient",
      "furnace.stability",
      "voltmeter.drift@sensor",
      "heater.pickup@sensor",
      "junction.spread@sensor",
      "sensor.inhomogeneity",
      "sensor.immersion",
      "sensor.shunting",
      "sensor.hysteresis",
      "shared",
    ]);
    for (const line of added) {
      expect([line.effect, line.variance, line.share]).toEqual([0, 0, 0]);
      expect(line.source).toMatch(
        /EA-4\/02 example S5 has no line|not stated in an evidence file of version 1/,
      );
    }
  });

  it("is dominated by the furnace, and states no conformity", () => {
    expect(point.dominant).toBe("furnace.uniformity");
    expect(point.conformity.state).toBe("no-statement");
  });

  it("marks what is not published as ours", () => {
    expect(s5.origin).toBe("published-example");
    expect(s5.source).toMatch(/Not published, and ours: the times of the readings/);
    for (const reference of s5.references) expect(reference.calibration.note).toMatch(/is ours too/);
  });
});
