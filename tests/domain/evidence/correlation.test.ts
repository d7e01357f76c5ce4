import { describe, expect, it } from "vitest";
import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { buildEvidence } from "./build-evidence";
import { measured } from "./measured";

/*
 * Confirms decisions/0013-full-correlation.md. An error of the meter, the same in both readings, acts on
 * V_X = V_iX + S_X·(t_n − t_X) as 1 − S_X/S_S; one of a shared junction as −S_X(t_j) + S_X·S_S(t_j)/S_S.
 */

type Correlation = EvidenceInput["correlation"];
const because = (coefficient: number) => ({ coefficient, reason: "for a test" });

function evidenceWith(change: {
  readonly voltmeter?: number;
  readonly junction?: number;
  readonly references?: Partial<Record<keyof Correlation["references"], number>>;
}): EvidenceInput {
  const evidence = buildEvidence({ sensors: ["N"], junctionCelsius: 20 });
  const { references } = evidence.correlation;
  return {
    ...evidence,
    correlation: {
      voltmeter: because(change.voltmeter ?? 0),
      junction: because(change.junction ?? 0),
      references: {
        calibration: because(change.references?.calibration ?? references.calibration.coefficient),
        drift: because(change.references?.drift ?? references.drift.coefficient),
        own: because(change.references?.own ?? references.own.coefficient),
      },
    },
  };
}

function only(evidence: EvidenceInput): MeasuredPoint {
  const [point] = measured(evidence);
  if (!point) throw new Error("one point");
  return point;
}

const line = (point: MeasuredPoint, key: string) => {
  const found = [...point.temperatureBudget.contributions, ...point.emfBudget.contributions].find(
    (one) => one.key === key,
  );
  if (!found) throw new Error(key);
  return found;
};

describe("what meter and junction share", () => {
  const independent = only(evidenceWith({}));

  it("fully correlated, the meter acts as u·|1 − S_X/S_S| and no more", () => {
    const point = only(evidenceWith({ voltmeter: 1 }));
    const ratio = point.seebeckMicrovoltPerCelsius / 10.2072;
    const squares = ["calibration", "drift"].map(
      (key) => line(point, `voltmeter.${key}@sensor`).standardUncertainty ** 2,
    );
    const u2 = squares.reduce((a, b) => a + b, 0);
    const difference = point.combinedMicrovolt ** 2 - independent.combinedMicrovolt ** 2;
    expect(difference).toBeCloseTo(u2 * ((1 - ratio) ** 2 - 1 - ratio ** 2), 3);
    expect(line(point, "shared").variance).toBeCloseTo(difference, 9);
    expect(line(point, "shared").effect).toBeCloseTo(-Math.sqrt(-difference), 9);
  });

  it("a shared junction acts as u·|S_X(t_j) − S_X·S_S(t_j)/S_S|", () => {
    const point = only(evidenceWith({ junction: 1 }));
    const u = 0.05 / Math.sqrt(3);
    const ratio = point.seebeckMicrovoltPerCelsius / 10.2072;
    const direct = 26.6172;
    const through = 5.8859 * ratio;
    const both = u * u * ((direct - through) ** 2 - direct ** 2 - through ** 2);
    expect(line(point, "shared").variance / both).toBeCloseTo(1, 2);
  });

  it("shares sum to one with the covariance among them", () => {
    for (const point of [independent, only(evidenceWith({ voltmeter: 1, junction: 0.5 }))]) {
      const inputs = [
        ...point.temperatureBudget.contributions,
        ...point.emfBudget.contributions.filter(({ kind }) => kind !== "stage"),
      ];
      expect(inputs.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    }
  });

  it("two junctions apart share nothing; two of one block share its thermometer", () => {
    const evidence = evidenceWith({ junction: 1 });
    const [junction] = evidence.junctions as [EvidenceInput["junctions"][number]];
    const apart = (block?: string): EvidenceInput => ({
      ...evidence,
      junctions: ["J", "J2"].map((id) => ({ ...junction, id, ...(block ? { block } : {}) })),
      load: evidence.load.map((place) =>
        place.item.kind === "sensor" ? { ...place, junction: "J2" } : place,
      ),
    });
    expect(line(only(apart()), "shared").variance).toBe(0);
    expect(line(only(apart("B")), "shared").variance).toBe(line(only(evidence), "shared").variance);
  });

  it("with one of two references on the sensor's junction, half of it is shared", () => {
    const evidence = evidenceWith({ junction: 1 });
    const [junction] = evidence.junctions as [EvidenceInput["junctions"][number]];
    const half: EvidenceInput = {
      ...evidence,
      junctions: [junction, { ...junction, id: "J2" }],
      load: evidence.load.map((place) =>
        place.item.kind === "reference" && place.item.id === "R2" ? { ...place, junction: "J2" } : place,
      ),
    };
    const whole = line(only(evidence), "shared").variance;
    expect(line(only(half), "shared").variance / whole).toBeCloseTo(0.5, 9);
  });

  it("is named with its pairs and its reasons", () => {
    const point = only(evidenceWith({ voltmeter: 1, junction: 0.5 }));
    expect(point.shared).toEqual([
      { first: "voltmeter.calibration@sensor", second: "voltmeter.calibration@reference", coefficient: 1 },
      { first: "voltmeter.drift@sensor", second: "voltmeter.drift@reference", coefficient: 1 },
      { first: "junction@sensor", second: "junction@reference", coefficient: 0.5 },
    ]);
    expect(line(point, "shared").source).toBe("voltmeter r = 1: for a test; junction r = 0.5: for a test");
  });
});

describe("several references", () => {
  it("uncorrelated certificates of two average to 1/√2, correlated ones stay", () => {
    const effect = (calibration: number) =>
      line(only(evidenceWith({ references: { calibration } })), "reference.calibration").effect;
    expect(effect(1)).toBe(0.2);
    expect(effect(0)).toBeCloseTo(0.2 / Math.SQRT2, 12);
    expect(effect(0.5)).toBeCloseTo(0.2 * Math.sqrt(0.75), 12);
  });

  it("own errors and drift have their own coefficient; the one meter stays one", () => {
    const point = only(evidenceWith({ references: { own: 0, drift: 0 } }));
    const one = only(evidenceWith({}));
    for (const key of ["reference.drift", "reference.inhomogeneity", "scanner.parasitic@reference"]) {
      expect(line(point, key).effect).toBeCloseTo(line(one, key).effect / Math.SQRT2, 12);
    }
    expect(line(point, "voltmeter.calibration@reference").effect).toBe(
      line(one, "voltmeter.calibration@reference").effect,
    );
    expect(line(point, "junction@reference").effect).toBe(line(one, "junction@reference").effect);
  });
});
