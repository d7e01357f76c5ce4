import { describe, expect, it } from "vitest";
import { CharacterisationPlan, decidePlan } from "@/lib/domain/furnace/characterisation-plan";
import { evaluateSurvey } from "@/lib/domain/furnace/evaluate-survey";
import { surveyKinds } from "@/lib/domain/furnace/survey-kinds";
import { SurveyReadings } from "@/lib/domain/furnace/survey-readings";
import type { Result } from "@/lib/domain/refusal";
import { simulateSurvey } from "@/lib/station/simulation/simulate-survey";
import { furnaceAt, plan } from "./plan";

const fieldsOf = (result: Result<unknown>): Readonly<Record<string, string>> => {
  if (result.ok) throw new Error("not refused");
  return result.refusal.fields ?? {};
};
const taken = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.value;
};

describe("a survey as recorded", () => {
  it("gives back the furnace that was put in, each kind", () => {
    const furnace = furnaceAt(1000);
    for (const kind of surveyKinds) {
      const readings = simulateSurvey(kind, furnace, 11);
      expect(SurveyReadings.parse(readings)).toEqual(readings);
      const found = taken(evaluateSurvey(plan, 1000, readings));
      if (found.kind === "axial") {
        expect(Math.abs(found.halfRangeCelsius - 0.2)).toBeLessThan(4 * found.standardUncertainty + 0.01);
        expect(found.parts.probeInhomogeneity).toBeGreaterThan(0.05);
      }
      if (found.kind === "positions") {
        expect(Math.abs(found.halfRangeCelsius - 0.175)).toBeLessThan(4 * found.standardUncertainty);
        // Four places, four thermocouples, five arrangements: twenty readings, 3 + 4 + 4 unknowns.
        expect(found.degreesOfFreedom).toBe(9);
      }
      if (found.kind === "stability") expect(found.changeCelsius).toBeGreaterThan(0.02);
      if (found.kind === "immersion") expect(Math.abs(found.bestMillimetre - 400)).toBeLessThanOrEqual(25);
    }
  });

  it("reads the same from temperatures as from emf", () => {
    const rows = [-30, -15, 0, 15, 30, 30, 15, 0, -15, -30].map((step) => ({
      millimetre: 400 + step,
      probe: 1000 - 0.0004 * step * step,
      monitor: 999.5,
      minutes: null,
    }));
    const found = taken(
      evaluateSurvey(plan, 1000, { kind: "axial", unit: "celsius", junctionCelsius: 0, rows }),
    );
    expect(found.kind === "axial" && found.halfRangeCelsius).toBeCloseTo(0.18, 9);
  });

  it("refuses a wrong reading at its own field, and keeps the others out of it", () => {
    const readings = simulateSurvey("axial", furnaceAt(1000), 1);
    if (readings.kind !== "axial") throw new Error("another kind");
    const slipped = readings.rows.map((row, i) => (i === 3 ? { ...row, probe: row.probe * 10 } : row));
    const cold = readings.rows.map((row, i) => (i === 2 ? { ...row, monitor: 5000 } : row));
    const above = fieldsOf(evaluateSurvey(plan, 1000, { ...readings, rows: slipped }));
    expect(Object.keys(above)).toEqual(["readings.rows.3.probe"]);
    expect(above["readings.rows.3.probe"]).toContain("no emf of type S");
    expect(fieldsOf(evaluateSurvey(plan, 1000, { ...readings, rows: cold }))).toEqual({
      "readings.rows.2.monitor": expect.stringContaining("in a survey at 1000 °C"),
    });
  });

  it("refuses a temperature that was not planned, and readings that say too little", () => {
    const readings = simulateSurvey("axial", furnaceAt(1000), 1);
    if (readings.kind !== "axial") throw new Error("another kind");
    expect(Object.keys(fieldsOf(evaluateSurvey(plan, 900, readings)))).toEqual(["celsius"]);
    const once = { ...readings, rows: readings.rows.slice(0, 7) };
    expect(fieldsOf(evaluateSurvey(plan, 1000, once))["readings.rows"]).toContain("Go back over the places");
    const short = evaluateSurvey({ ...plan, toMillimetre: 460 }, 1000, readings);
    expect(fieldsOf(short)["readings.rows"]).toContain("reaches from 370 mm to 430 mm");
  });

  it("refuses a thermocouple that is not defined at the temperature or at its junction", () => {
    const readings = simulateSurvey("axial", furnaceAt(1000), 1);
    const typeT = { ...plan, probeType: "T" } as const;
    expect(evaluateSurvey(typeT, 1000, readings)).toMatchObject({ ok: false, refusal: { code: "rule" } });
    const cold = { ...readings, junctionCelsius: -4 } as const;
    const typeB = { ...plan, probeType: "B" } as const;
    expect(fieldsOf(evaluateSurvey(typeB, 1000, cold))["readings.rows.0.probe"]).toContain("beyond type B");
  });
});

describe("a plan", () => {
  const furnace = { minimumCelsius: 300, maximumCelsius: 1100, lengthMillimetre: 1000 };

  it("holds within the furnace", () => {
    expect(decidePlan(plan, furnace)).toEqual({ ok: true, value: plan });
  });

  it("is refused beyond its range, its tube, and with one thermocouple for both", () => {
    const wrong = {
      ...plan,
      temperatures: [250, 1000],
      fromMillimetre: -5,
      toMillimetre: 1200,
      monitor: "REF-02",
    };
    expect(Object.keys(fieldsOf(decidePlan(wrong, furnace))).sort()).toEqual([
      "plan.fromMillimetre",
      "plan.monitor",
      "plan.temperatures",
      "plan.toMillimetre",
    ]);
    expect(Object.keys(fieldsOf(decidePlan({ ...plan, temperatures: [1150] }, furnace)))).toEqual([
      "plan.temperatures",
    ]);
  });

  it("has rising temperatures and a length that ends deeper than it begins", () => {
    expect(CharacterisationPlan.safeParse({ ...plan, temperatures: [1000, 400] }).success).toBe(false);
    expect(CharacterisationPlan.safeParse({ ...plan, toMillimetre: 370 }).success).toBe(false);
  });
});
