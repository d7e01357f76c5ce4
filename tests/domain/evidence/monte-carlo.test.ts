import { describe, expect, it } from "vitest";
import { evaluateArguments } from "@/lib/commands/evaluate-arguments";
import { pointEffects } from "@/lib/domain/evidence/point-effects";
import { pointMonteCarlo } from "@/lib/domain/evidence/point-monte-carlo";
import { buildEvidence } from "./build-evidence";
import { measured } from "./measured";

const because = (coefficient: number) => ({ coefficient, reason: "for a test" });

function pointWith(voltmeter: number, halfWidth = 0.0005) {
  const evidence = buildEvidence({ sensors: ["N"] });
  const [point] = measured({
    ...evidence,
    sensors: evidence.sensors.map((s) => ({
      ...s,
      inhomogeneity: {
        kind: "rectangular" as const,
        halfWidth,
        unit: "relative" as const,
        source: "invented",
      },
    })),
    correlation: { ...evidence.correlation, voltmeter: because(voltmeter), junction: because(voltmeter) },
  });
  if (!point) throw new Error("one point");
  return point;
}

const trials = 200_000;
const workspace = new Float64Array(trials);
const drawn = (point: ReturnType<typeof pointWith>, seed = 1) => {
  const outcome = pointMonteCarlo(point, 0, { seed, trials: { kind: "fixed", count: trials } }, workspace);
  if (!outcome.ok) throw new Error(outcome.problem.message);
  return outcome.value;
};

describe("a point by Monte Carlo", () => {
  it("has the budget's own u, with and without what is shared", () => {
    for (const voltmeter of [0, 1]) {
      const point = pointWith(voltmeter);
      const result = drawn(point);
      expect(result.estimateMicrovolt).toBeCloseTo(point.emfAtNominalMicrovolt, 0);
      // A little more than 1: lines with 9 degrees of freedom are drawn from Student's t, which spreads wider.
      const ratio = result.standardUncertaintyMicrovolt / point.combinedMicrovolt;
      expect(ratio).toBeGreaterThan(1);
      expect(ratio).toBeLessThan(1.015);
      expect(result.probability).toBe(point.coverage.probability);
    }
  });

  it("bears the GUM out where nothing dominates, and not where one rectangle does", () => {
    const even = drawn(pointWith(0, 0.0001));
    expect(even.expandedMicrovolt / pointWith(0, 0.0001).expandedMicrovolt).toBeGreaterThan(0.96);
    const dominated = pointWith(0, 0.02);
    const result = drawn(dominated);
    expect(result.gum.isValid).toBe(false);
    // A rectangle alone would have 0.9545·√3 = 1.653 against 2.
    expect(result.expandedMicrovolt / dominated.combinedMicrovolt).toBeCloseTo(1.653, 1);
  });

  it("is the same to the bit from the same seed, and another from another", () => {
    const point = pointWith(1);
    expect(drawn(point, 5)).toEqual(drawn(point, 5));
    expect(drawn(point, 6).symmetricMicrovolt.low).not.toBe(drawn(point, 5).symmetricMicrovolt.low);
  });

  it("has the lines of both stages with their signs", () => {
    const point = pointWith(1);
    const effects = pointEffects(point);
    const of = (key: string) => effects.find((line) => line.key === key)?.effect ?? Number.NaN;
    expect(of("voltmeter.calibration@sensor")).toBeGreaterThan(0);
    expect(of("voltmeter.calibration@reference")).toBeLessThan(0);
    const squares = effects.reduce((sum, { effect }) => sum + effect * effect, 0);
    const covariance = point.emfBudget.contributions.find(({ key }) => key === "shared")?.variance ?? 0;
    expect(squares + covariance).toBeCloseTo(point.combinedMicrovolt ** 2, 6);
  });
});

describe("the command line of evaluate", () => {
  it("takes files, trials and a seed in any order", () => {
    expect(evaluateArguments(["a.json"])).toEqual({ kind: "evaluate", files: ["a.json"], monteCarlo: null });
    expect(evaluateArguments(["--monte-carlo", "a.json"])).toMatchObject({
      files: ["a.json"],
      monteCarlo: { seed: 1, trials: { kind: "fixed", count: 1_000_000 } },
    });
    expect(evaluateArguments(["--seed", "9", "a.json", "--monte-carlo", "20000", "b.json"])).toMatchObject({
      files: ["a.json", "b.json"],
      monteCarlo: { seed: 9, trials: { kind: "fixed", count: 20_000 } },
    });
    expect(evaluateArguments(["a.json", "--monte-carlo", "adaptive"])).toMatchObject({
      monteCarlo: { trials: { kind: "adaptive", digits: 2 } },
    });
  });

  it.each([
    [["a.json", "--monte-carlo", "10"], /10000 to 50000000/],
    [["a.json", "--seed", "2"], /with --monte-carlo only/],
    [["a.json", "--monte-carlo", "--seed", "x"], /whole number/],
    [["a.json", "--monte-carlo", "--seed"], /whole number/],
    [["--what"], /no option --what/],
    [["--monte-carlo", "20000"], /at least one evidence file/],
  ])("refuses %j", (parameters, says) => {
    expect(evaluateArguments(parameters)).toMatchObject({
      kind: "refused",
      message: expect.stringMatching(says),
    });
  });

  it("knows help and the schema", () => {
    expect(evaluateArguments(["-h"])).toEqual({ kind: "help" });
    expect(evaluateArguments(["--schema"])).toEqual({ kind: "schema" });
  });
});
