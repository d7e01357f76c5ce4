import { describe, expect, it } from "vitest";
import { changeableLines, whatIf } from "@/lib/domain/evidence/what-if";
import { buildEvidence } from "./build-evidence";
import { measure, measured } from "./measured";

/** Trying an uncertainty is the evaluation's own arithmetic: unchanged it is the evaluation, to the last bits. */
describe("what if", () => {
  const points = measure({});
  const agreed = { rule: { kind: "simple" }, digits: 2 } as const;
  const answered = (point: (typeof points)[number], changes: Readonly<Record<string, number>>) => {
    const answer = whatIf(point, changes, agreed);
    if (!answer.ok) throw new Error(answer.problems[0]?.message);
    return answer.value;
  };

  it("is the evaluated U, k and largest line when nothing is changed", () => {
    for (const point of points) {
      const { expandedCelsius, coverageFactor, printedCelsius } = answered(point, {});
      expect(expandedCelsius / point.expandedCelsius).toBeCloseTo(1, 12);
      expect(coverageFactor).toBe(point.coverageFactor);
      expect(printedCelsius).toBe(point.printed.expandedCelsius);
    }
  });

  it("takes the variance of a line away when its u is tried as zero", () => {
    for (const point of points) {
      const shared = new Set<string>(point.shared.flatMap(({ first, second }) => [first, second]));
      for (const line of changeableLines(point).filter(({ key, share }) => !shared.has(key) && share > 0)) {
        const { expandedCelsius, coverageFactor } = answered(point, { [line.key]: 0 });
        const left = (expandedCelsius / coverageFactor) ** 2;
        const whole = (point.expandedCelsius / point.coverageFactor) ** 2;
        expect(left / whole, line.key).toBeCloseTo(1 - line.share, 9);
      }
    }
  });

  it("names what dominates then, and does not call a result better than it was when u grows", () => {
    const point = points[0];
    if (!point) throw new Error("no point");
    const worse = answered(point, { "sensor.inhomogeneity": 1000 });
    expect(worse.dominant.label).toBe("Sensor inhomogeneity");
    expect(worse.dominant.share).toBeGreaterThan(0.9);
    expect(worse.expandedCelsius).toBeGreaterThan(point.expandedCelsius);
    const guarded = whatIf(
      point,
      { "sensor.inhomogeneity": 1000 },
      {
        rule: { kind: "guarded", guardBandRatio: 1 },
        digits: 2,
      },
    );
    expect(guarded.ok && guarded.value.conformity).toBe(
      point.conformity.tolerance === null ? "no-statement" : "not-decidable",
    );
  });

  it("judges unchanged as the evaluation did, by its degrees of freedom and the U raised to the capability", () => {
    const evidence = buildEvidence({ sensors: ["K"], errorCelsius: 1.7 });
    const rule = { kind: "target-risk", falseAcceptance: 0.05, isBinary: true } as const;
    const line = { type: "K" as const, fromCelsius: 0, toCelsius: 1100, source: "invented" };
    const scattered = evidence.sensors.map((one) => ({
      ...one,
      repeatability: {
        ...{ kind: "standard" as const, standard: 60, unit: "microvolt" as const },
        ...{ degreesOfFreedom: 4, source: "invented" },
      },
    }));
    for (const [change, scope] of [
      [{}, [{ ...line, expandedCelsius: 3.5 }]],
      [{ sensors: scattered }, []],
    ] as const) {
      const [point] = measured({ ...evidence, ...change, decisionRule: rule, scope: [...scope] });
      if (!point) throw new Error("no point");
      const answer = whatIf(point, {}, { rule, digits: 2 });
      expect(point.conformity.state).toBe("fail");
      expect(answer.ok && answer.value.conformity).toBe(point.conformity.state);
      expect(answer.ok && answer.value.printedCelsius).toBe(point.printed.expandedCelsius);
    }
  });

  it("refuses a result without any uncertainty", () => {
    const point = points[0];
    if (!point) throw new Error("no point");
    const nothing = Object.fromEntries(changeableLines(point).map(({ key }) => [key, 0]));
    const answer = whatIf(point, nothing, agreed);
    expect(answer.ok ? "" : answer.problems[0]?.message).toContain("without uncertainty");
  });
});
