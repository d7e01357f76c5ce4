import { describe, expect, it } from "vitest";
import { ConfigurationEvidence } from "@/lib/domain/evidence/schema";
import {
  CharacterisationFigures,
  characterisedRange,
  readFigures,
} from "@/lib/domain/furnace/characterisation-figures";
import { configurationEvidenceOf } from "@/lib/domain/furnace/configuration-evidence";
import {
  type EvaluatedSurvey,
  evaluateCharacterisation,
} from "@/lib/domain/furnace/evaluate-characterisation";
import { evaluateSurvey } from "@/lib/domain/furnace/evaluate-survey";
import { figuresStatement } from "@/lib/domain/furnace/figures-statement";
import { surveyKinds } from "@/lib/domain/furnace/survey-kinds";
import { simulateSurvey } from "@/lib/station/simulation/simulate-survey";
import { furnaceAt, plan } from "./plan";

const surveys: readonly EvaluatedSurvey[] = plan.temperatures.flatMap((celsius) =>
  surveyKinds.map((kind, seed) => {
    const found = evaluateSurvey(plan, celsius, simulateSurvey(kind, furnaceAt(celsius), seed + 1));
    if (!found.ok) throw new Error(found.refusal.message);
    return { celsius, evaluation: found.value };
  }),
);
const evaluated = (() => {
  const found = evaluateCharacterisation("CH-2026-0001", plan, surveys);
  if (!found.ok) throw new Error(found.refusal.message);
  return found.value;
})();

const characterisation = {
  id: "c",
  configurationId: "f",
  performedOn: "2026-02-01",
  validUntil: "2027-02-01",
  uniformityHalfWidthCelsius: evaluated.uniformityHalfWidthCelsius,
  statement: evaluated.statement,
  figures: evaluated.figures,
} as const;
const configuration = { name: "Bare tube", kind: "bare-tube" } as const;
const furnace = { tag: "FUR-1", name: "Tube" };

describe("a characterisation of several surveys", () => {
  it("has figures at each planned temperature, which survive their storing", () => {
    expect(CharacterisationFigures.parse(evaluated.figures)).toEqual(evaluated.figures);
    expect(readFigures(JSON.stringify(evaluated.figures))).toEqual(evaluated.figures);
    expect(evaluated.figures.temperatures.map(({ celsius }) => celsius)).toEqual([400, 1000]);
    expect(characterisedRange(evaluated.figures)).toEqual({ fromCelsius: 400, toCelsius: 1000 });
    const [low] = evaluated.figures.temperatures;
    expect(low?.axial?.halfWidthCelsius).toBeGreaterThan(0.15);
    expect(low?.immersion?.bestMillimetre).toBe(400);
  });

  it("says length, temperatures and half range in its statement, within what the evidence holds", () => {
    expect(evaluated.statement).toMatch(
      /^CH-2026-0001: half ranges in °C, over 60 mm\. 400 °C: axial ± 0\.\d+, positions ± /,
    );
    const [one] = evaluated.figures.temperatures;
    if (!one) throw new Error("no temperature");
    const many = Array.from({ length: 20 }, (_, i) => ({ ...one, celsius: 100 + 50 * i }));
    const long = figuresStatement({ ...evaluated.figures, temperatures: many });
    expect(long.length).toBeLessThanOrEqual(600);
    expect(long).toContain("the largest: axial");
  });

  it("is not submitted while a survey is missing, and names each", () => {
    const some = surveys.filter(({ celsius, evaluation }) => celsius === 400 || evaluation.kind === "axial");
    const refused = evaluateCharacterisation("CH-1", plan, some);
    expect(refused).toMatchObject({
      ok: false,
      refusal: {
        code: "rule",
        message:
          "Still to be measured: Differences between positions at 1000 °C; Stability over time at 1000 °C. Nothing was submitted.",
      },
    });
    const noImmersion = surveys.filter(({ evaluation }) => evaluation.kind !== "immersion");
    const found = evaluateCharacterisation("CH-1", plan, noImmersion);
    expect(found.ok && found.value.figures.temperatures[0]?.immersion).toBe(null);
  });

  it("takes the later of two surveys of one kind", () => {
    const again = surveys.find(
      ({ celsius, evaluation }) => celsius === 400 && evaluation.kind === "stability",
    );
    if (again?.evaluation.kind !== "stability") throw new Error("no survey");
    const better = { ...again, evaluation: { ...again.evaluation, halfWidthCelsius: 0.001 } };
    const found = evaluateCharacterisation("CH-1", plan, [...surveys, better]);
    expect(found.ok && found.value.figures.temperatures[0]?.stability?.halfWidthCelsius).toBe(0.001);
  });
});

describe("the evidence of a measured characterisation", () => {
  const evidence = configurationEvidenceOf(furnace, configuration, characterisation);
  const { axial, radial, uniformity } = evidence.characterisation;

  it("states axial and positions apart, by temperature, and the combined line at zero", () => {
    expect(ConfigurationEvidence.parse(evidence)).toEqual(evidence);
    expect(uniformity).toEqual({
      kind: "zero",
      reason: "stated apart, along the tube and between positions",
    });
    expect(axial).toMatchObject({ kind: "by-temperature", at: [{ celsius: 400 }, { celsius: 1000 }] });
    expect("source" in axial && axial.source).toBe(
      "characterisation CH-2026-0001 of 2026-02-01, probe moved along the tube, half range over 60 mm",
    );
    expect("source" in radial && radial.source).toContain("thermocouples exchanged between positions");
  });

  const radialAt = (loaded: Parameters<typeof configurationEvidenceOf>[3]) => {
    const found = configurationEvidenceOf(furnace, configuration, characterisation, loaded).characterisation
      .radial;
    return found.kind === "by-temperature" ? (found.at[1]?.halfWidthCelsius ?? 0) : 0;
  };

  it("counts more than half the range where the references stand at one end of it", () => {
    const half = evaluated.figures.temperatures[1]?.positions?.halfWidthCelsius ?? 0;
    expect(radialAt(undefined)).toBe(half);
    expect(radialAt({ references: ["2"], sensors: ["1"] })).toBeCloseTo(2 * half, 9);
    expect(radialAt({ references: ["1", "2"], sensors: ["centre"] })).toBe(half);
    expect(radialAt({ references: ["2", "R9"], sensors: ["1"] })).toBe(half);
    expect(radialAt({ references: ["R9"], sensors: ["1"] })).toBe(half);
  });

  it("of a typed one stays the one figure it was", () => {
    const typed = configurationEvidenceOf(furnace, configuration, { ...characterisation, figures: null });
    expect(typed.characterisation.uniformity).toMatchObject({ kind: "rectangular", unit: "celsius" });
    expect(typed.characterisation.axial).toMatchObject({ kind: "zero" });
  });

  it("leaves a kind that was not measured at nought", () => {
    const temperatures = evaluated.figures.temperatures.map((at) => ({
      ...at,
      axial: null,
      positions: null,
    }));
    const bare = configurationEvidenceOf(furnace, configuration, {
      ...characterisation,
      figures: { ...evaluated.figures, temperatures },
    });
    expect(bare.characterisation.axial).toMatchObject({
      at: [{ halfWidthCelsius: 0 }, { halfWidthCelsius: 0 }],
    });
    expect(bare.characterisation.radial).toMatchObject({
      at: [{ halfWidthCelsius: 0 }, { halfWidthCelsius: 0 }],
    });
  });
});
