import { describe, expect, it } from "vitest";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { buildEvidence, microvoltOf } from "./build-evidence";
import { lineOf, problems } from "./changed-evidence";
import { measured } from "./measured";

describe("a certificate as a polynomial or as coefficients", () => {
  const nominal = 600;
  const certified = (correction: EvidenceInput["references"][number]["correction"]): EvidenceInput => {
    const evidence = buildEvidence({ sensors: ["K"], nominals: [nominal] });
    return { ...evidence, references: evidence.references.map((r) => ({ ...r, correction })) };
  };
  const points = {
    kind: "points",
    points: [0, 1200].map((celsius) => ({ celsius, deviationMicrovolt: celsius / 100 })),
  } as const;

  it("gives what the same deviation gives as a table", () => {
    const table = measured(certified(points))[0];
    const polynomial = measured(
      certified({ kind: "polynomial", coefficientsMicrovolt: [0, 0.01], fromCelsius: 0, toCelsius: 1200 }),
    )[0];
    expect(polynomial?.referenceCelsius).toBeCloseTo(table?.referenceCelsius ?? 0, 9);
    expect(polynomial?.references[0]?.deviationMicrovolt).toBeCloseTo(5.994, 3);
  });

  it("solves the reference's own emf where the certificate gives that", () => {
    // A straight line through the table's value at 600 °C, 5 µV high.
    const slope = 10.2;
    const own = [microvoltOf("S", nominal) + 5 - slope * nominal, slope];
    const [point] = measured(
      certified({ kind: "coefficients", coefficientsMicrovolt: own, fromCelsius: 550, toCelsius: 650 }),
    );
    expect(point?.referenceCelsius).toBeCloseTo(nominal - 5 / slope, 9);
    expect(point?.references[0]?.deviationMicrovolt).toBeCloseTo(5, 1);
  });

  it("holds in its range only, and the range runs upwards", () => {
    const narrow = (fromCelsius: number, toCelsius: number) =>
      problems(certified({ kind: "polynomial", coefficientsMicrovolt: [0], fromCelsius, toCelsius }));
    expect(narrow(590, 610)).toEqual([]);
    expect(narrow(601, 610)).toMatchObject([{ path: "references[0].correction" }]);
    expect(narrow(610, 590)).toMatchObject([
      { path: "references[0].correction" },
      { path: "references[1].correction" },
    ]);
  });
});

describe("what a reference's certificate and history say", () => {
  const nominal = 600;
  type Reference = EvidenceInput["references"][number];
  const withReferences = (change: Partial<Reference>): EvidenceInput => {
    const evidence = buildEvidence({ sensors: ["K"], nominals: [nominal] });
    return { ...evidence, references: evidence.references.map((r) => ({ ...r, ...change })) };
  };

  it("an error of 0.5 °C takes 0.5 °C off, stated as points or as a polynomial", () => {
    const points = [500, 700].map((celsius) => ({ celsius, errorCelsius: 0.5 }));
    for (const correction of [
      { kind: "error-points", points },
      { kind: "error-polynomial", coefficientsCelsius: [0.5], fromCelsius: 500, toCelsius: 700 },
    ] satisfies Reference["correction"][]) {
      expect(measured(withReferences({ correction }))[0]?.referenceCelsius).toBeCloseTo(599.5, 3);
    }
  });

  it("between points a cubic may stand instead of straight lines, with the points' second differences as bound", () => {
    const points = [400, 500, 700, 800].map((celsius) => ({
      celsius,
      deviationMicrovolt: celsius ** 2 / 1e4,
    }));
    const interpolation = { kind: "second-differences", source: "certificate" } as const;
    const [linear, cubic] = (["linear", "monotone-cubic"] as const).map(
      (between) =>
        measured(withReferences({ correction: { kind: "points", points, between }, interpolation }))[0],
    );
    const at = linear?.referenceCelsius ?? 0;
    expect(linear?.references[0]?.deviationMicrovolt).toBeCloseTo(25 + 0.12 * (at - 500), 9);
    expect(cubic?.references[0]?.deviationMicrovolt).not.toBeCloseTo(25 + 0.12 * (at - 500), 1);
    // f″/2 = 1e-4 µV/°C², 100 °C from either point: ±1 µV.
    const line = lineOf(linear, "reference.interpolation");
    expect(line.standardUncertainty).toBeCloseTo(1 / Math.sqrt(3), 2);
    expect(line).toMatchObject({ unit: "µV", distribution: "rectangular" });
    expect(line.source).toContain("second differences");
  });

  const byUse = {
    kind: "by-use",
    perYear: { rateCelsius: -0.1, halfWidthCelsius: 0.1 },
    perHour: { rateCelsius: -0.001, halfWidthCelsius: 0.001 },
    hours: 100,
    isCorrected: false,
    source: "six calibrations",
  } as const;
  /** From 2026-01-10 to 2026-06-01. */
  const years = 142 / 365.25;

  it("drift by dates and hours stays in U where it is not corrected", () => {
    const [point] = measured(withReferences({ drift: byUse }));
    const line = lineOf(point, "reference.drift");
    expect(line.standardUncertainty).toBeCloseTo((2 * (0.1 * years + 0.1)) / Math.sqrt(3), 12);
    expect(line.source).toBe("six calibrations; 142 days, 100 h of use");
    expect(point?.referenceCelsius).toBeCloseTo(nominal, 9);
  });

  it("corrected, the expected drift leaves the temperature and half of it leaves U", () => {
    const [point] = measured(withReferences({ drift: { ...byUse, isCorrected: true } }));
    expect(point?.referenceCelsius).toBeCloseTo(nominal + 0.1 * years + 0.1, 9);
    expect(lineOf(point, "reference.drift").standardUncertainty).toBeCloseTo(
      (0.1 * years + 0.1) / Math.sqrt(3),
      12,
    );
  });

  it("drift by time asks for the day of the run, and for a certificate before it", () => {
    const evidence = withReferences({ drift: byUse });
    const { startedAt: _, ...scans } = evidence.scans;
    expect(problems({ ...evidence, scans })).toMatchObject([
      { path: "scans.startedAt" },
      { path: "scans.startedAt" },
    ]);
    const later = { certificate: "x", issuer: "y", performedOn: "2026-07-01" };
    expect(problems(withReferences({ drift: byUse, calibration: later }))).toMatchObject([
      { path: "references[0].drift" },
      { path: "references[1].drift" },
    ]);
  });
});
