import { describe, expect, it } from "vitest";
import { ConfigurationEvidence, type EvidenceInput } from "@/lib/domain/evidence/schema";
import { buildEvidence } from "./build-evidence";
import { lineOf, problems, withFurnace, zero } from "./changed-evidence";
import { measured } from "./measured";

const source = "characterisation CH-1 of 2026-02-01, half range over 60 mm";
const found = [
  { celsius: 400, halfWidthCelsius: 0.1, standardCelsius: 0 },
  { celsius: 700, halfWidthCelsius: 0.3, standardCelsius: 0.05 },
  { celsius: 1000, halfWidthCelsius: 0.2, standardCelsius: 0 },
];
const axial = { kind: "by-temperature", at: found, source } as const;

const evidenceAt = (nominals: number[]): EvidenceInput =>
  withFurnace(buildEvidence({ sensors: ["K"], nominals }), {
    uniformity: zero,
    axial,
    radial: {
      kind: "by-temperature",
      at: found.map((one) => ({ ...one, halfWidthCelsius: 0, standardCelsius: 0 })),
      source,
    },
  });

describe("a furnace's figure by temperature", () => {
  it("acts as found at a characterised temperature, widened by how well it is known", () => {
    const points = [400, 700, 1000].map((celsius) => measured(evidenceAt([celsius]))[0]);
    const u = points.map((point) => lineOf(point, "furnace.axial").standardUncertainty);
    expect(u[0]).toBeCloseTo(0.1 / Math.sqrt(3), 12);
    expect(u[1]).toBeCloseTo(Math.hypot(0.3 / Math.sqrt(3), 0.05), 12);
    expect(u[2]).toBeCloseTo(0.2 / Math.sqrt(3), 12);
    expect(lineOf(points[1], "furnace.axial")).toMatchObject({
      distribution: "rectangular",
      source: `${source}; as found at 700 °C`,
    });
  });

  it("takes the larger of the two about a setpoint between them, never a mean", () => {
    for (const celsius of [500, 900])
      expect(lineOf(measured(evidenceAt([celsius]))[0], "furnace.axial").source).toContain(
        "as found at 700 °C",
      );
  });

  it("stays in the budget at zero where nothing was found", () => {
    expect(lineOf(measured(evidenceAt([700]))[0], "furnace.radial")).toMatchObject({
      effect: 0,
      distribution: "none",
    });
  });

  it("is refused beyond the characterised temperatures, below and above", () => {
    for (const celsius of [399, 1001])
      expect(problems(evidenceAt([700, celsius]))).toMatchObject([
        {
          path: "configuration.characterisation.axial",
          message: expect.stringMatching(/from 400 to 1000 °C; .* lies beyond/),
        },
        { path: "configuration.characterisation.radial" },
      ]);
  });

  it("is read from a file: its figures are numbers from nought up", () => {
    const { characterisation } = evidenceAt([700]).configuration;
    const negative = { ...axial, at: [{ celsius: 700, halfWidthCelsius: -1, standardCelsius: 0 }] };
    const parse = (one: unknown) =>
      ConfigurationEvidence.shape.characterisation.safeParse({ ...characterisation, axial: one });
    expect(parse(axial).success).toBe(true);
    expect(parse(negative).success).toBe(false);
    expect(parse({ ...axial, at: [] }).success).toBe(false);
  });
});
