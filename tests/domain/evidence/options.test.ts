import { describe, expect, it } from "vitest";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { askFunction, lineThroughZero } from "./ask-function";
import { buildEvidence, microvoltOf } from "./build-evidence";
import { evaluate, measured } from "./measured";

/*
 * What evidence may ask for beside its lines: the second term of the carry, type A from block means, k after a
 * dominant rectangle, a deviation function, the scope. Invented runs without noise.
 */

const k = (change: object = {}) => buildEvidence({ sensors: ["K"], ...change });
const rectangular = (halfWidth: number) =>
  ({ kind: "rectangular", halfWidth, unit: "celsius", source: "invented" }) as const;

describe("the second term of the carry", () => {
  it("takes out what the slope alone leaves, −½·S′·Δ²", () => {
    // The furnace 4 °C low: the sensor is exact, so what stays is the neglected curvature.
    const scene = { nominals: [300], furnace: () => 296 };
    const evidence = buildEvidence({ sensors: ["S"], ...scene });
    const [first] = measured(evidence);
    const [second] = measured({ ...evidence, comparison: { ...evidence.comparison, carryOrder: 2 } });
    const exact = microvoltOf("S", 300);
    const slope = (microvoltOf("S", 300.5) - microvoltOf("S", 299.5)) / 1;
    const left = microvoltOf("S", 296) + 4 * slope - exact;
    expect(first?.deviationMicrovolt).toBeCloseTo(left, 4);
    expect(Math.abs(second?.deviationMicrovolt ?? 1)).toBeLessThan(Math.abs(left) / 50);
  });
});

describe("type A from block means", () => {
  const input = { kind: "block-means", blockSeconds: 100, source: "this window" } as const;
  const noisy = (evidence: EvidenceInput): EvidenceInput => ({
    ...evidence,
    // A slow wave of 2 µV, six blocks long: correlated within a block, seen between blocks.
    scans: {
      ...evidence.scans,
      channels: evidence.scans.channels.map((c) => ({
        ...c,
        microvolts: c.microvolts.map((v, i) => v + 2 * Math.sin(i / 9.5)),
      })),
    },
  });

  it("stands in the sensor's repeatability, with as many degrees of freedom as blocks, less the mean and the drift", () => {
    const evidence = noisy(k());
    const sensors = evidence.sensors.map((s) => ({ ...s, repeatability: input }));
    const [point] = measured({ ...evidence, sensors });
    const line = point?.emfBudget.contributions.find(({ key }) => key === "sensor.repeatability");
    expect(line?.degreesOfFreedom).toBe(7);
    expect(line?.standardUncertainty).toBeGreaterThan(0.2);
    expect(line?.source).toBe("this window: 9 blocks of 100 s in the window");
  });

  it("for references is each one's own, and averages", () => {
    const evidence = noisy(k());
    const [point] = measured({ ...evidence, referenceRepeatability: input });
    const line = point?.temperatureBudget.contributions.find(({ key }) => key === "reference.repeatability");
    expect(line?.effect).toBeCloseTo((line?.standardUncertainty ?? 0) / 10.2072 / Math.SQRT2, 5);
  });

  it("is refused where the window is too short for three blocks", () => {
    const evidence = k({ scans: 20 });
    const sensors = evidence.sensors.map((s) => ({ ...s, repeatability: input }));
    expect(() => measured({ ...evidence, sensors })).toThrow(/sensors\[0\].repeatability.*at least 4/);
  });
});

type EvidenceCoverage = "student" | "dominant" | "monte-carlo";

describe("k after a dominant rectangle", () => {
  const dominated = (coverage: EvidenceCoverage) => {
    const evidence = k();
    const sensors = evidence.sensors.map((s) => ({ ...s, inhomogeneity: rectangular(8) }));
    return measured({ ...evidence, sensors, coverage })[0];
  };

  it("is 0.95·√3 where the evidence asks for it, with the criterion said", () => {
    const point = dominated("dominant");
    expect(point?.coverageFactor).toBeCloseTo(0.95 * Math.sqrt(3), 12);
    expect(point?.coverage).toMatchObject({
      policy: "dominant",
      method: "one-dominant-rectangle",
      probability: 0.95,
    });
    expect(point?.coverage.criterion).toMatch(/0\.\d\d of “Sensor inhomogeneity”, at most 0\.3/);
  });

  it("is what the drawn budget gives where the evidence asks for that, the same each time", () => {
    const point = dominated("monte-carlo");
    expect(point?.coverage).toMatchObject({ policy: "monte-carlo", method: "monte-carlo" });
    expect(point?.coverage.criterion).toMatch(/100000 trials, seed 1; 95.45 %/);
    // A rectangle alone would have 0.9545·√3 = 1.653, a normal law 2: with a little of the second it lies just above the first.
    expect(point?.coverageFactor).toBeGreaterThan(1.64);
    expect(point?.coverageFactor).toBeLessThan(1.75);
    expect(dominated("monte-carlo")?.coverageFactor).toBe(point?.coverageFactor);
  });

  it("is Student's where it does not, or where nothing dominates", () => {
    expect(dominated("student")?.coverage.method).toBe("student");
    const [even] = measured({ ...k(), coverage: "dominant" });
    expect(even?.coverage).toMatchObject({ policy: "dominant", method: "student" });
    expect(even?.coverage.criterion).toMatch(/with \d+ effective degrees of freedom/);
  });
});

describe("a deviation function that the evidence asks for", () => {
  const nominals = [300, 500, 700, 900, 1100];
  const choice = { ...lineThroughZero, table: { unit: "fahrenheit", step: 100 } } as const;
  const asked = (over: readonly number[]) => askFunction({ over, choice });

  it("comes with its choice, its table in the unit asked for, and its coefficients", () => {
    const [fitted, ...others] = evaluate(asked(nominals)).functions;
    expect(others).toEqual([]);
    expect(fitted).toMatchObject({ sensor: "X1", choice, fitted: { degree: 1, isThroughZero: true } });
    expect(fitted?.table.unit).toBe("fahrenheit");
    expect(fitted?.table.rows[0]?.degrees).toBe(600);
    expect(fitted?.coefficients.texts).toHaveLength(2);
  });

  it("is a finding where there are too few points, and no function where none is asked for", () => {
    const few = evaluate(asked([300, 500]));
    expect(few.functions).toEqual([]);
    expect(few.findings.map(({ code }) => code)).toContain("function-not-fitted");
    expect(evaluate(k()).functions).toEqual([]);
  });
});

describe("the accredited scope", () => {
  const scope = (expandedCelsius: number, from = 0, to = 1100, type: "K" | "S" = "K") => [
    { type, fromCelsius: from, toCelsius: to, expandedCelsius, source: "scope, line 4 (invented)" },
  ];
  const [plain] = measured(k());

  it("never lets a smaller U be printed than the capability", () => {
    const [point] = measured({ ...k(), scope: scope(3) });
    expect(point?.scope).toEqual({
      state: "inside",
      capabilityCelsius: 3,
      isRaised: true,
      source: "scope, line 4 (invented)",
    });
    expect(point?.printed.expandedCelsius).toBe("3.0");
    expect(point?.expandedCelsius).toBe(plain?.expandedCelsius);
    expect(point?.conformity.acceptanceCelsius).toBeCloseTo(4.5 - 3, 12);
  });

  it("leaves a larger U as it is", () => {
    const [point] = measured({ ...k(), scope: scope(0.01) });
    expect(point?.scope).toMatchObject({ state: "inside", isRaised: false });
    expect(point?.printed).toEqual(plain?.printed);
  });

  it("marks a point outside by temperature or type, and says so when no scope is stated", () => {
    for (const lines of [scope(3, 0, 599), scope(3, 601, 1100), scope(3, 0, 1100, "S")]) {
      const [point] = measured({ ...k(), scope: lines });
      expect(point?.scope).toMatchObject({ state: "outside", capabilityCelsius: null, isRaised: false });
      expect(point?.printed).toEqual(plain?.printed);
    }
    expect(plain?.scope.state).toBe("not-stated");
  });
});
