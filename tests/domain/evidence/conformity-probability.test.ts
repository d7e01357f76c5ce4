import { describe, expect, it } from "vitest";
import { assessConformity } from "@/lib/domain/evidence/assess-conformity";
import { type DecisionRule, Evidence, type EvidenceInput } from "@/lib/domain/evidence/schema";
import { conformanceProbability } from "@/lib/metrology/conformity/conformance-probability";
import { buildEvidence } from "./build-evidence";
import { measured } from "./measured";

const evidence = buildEvidence({ sensors: ["K"], errorCelsius: 1.5 });
const [sensor] = Evidence.parse(evidence).sensors;
if (!sensor) throw new Error("no sensor");

/** Type K class 2 at 300 °C: ± 2.5 °C. */
const assess = (rule: DecisionRule, degreesOfFreedom: number | null) =>
  assessConformity({
    ...{ sensor, rule, degreesOfFreedom, nominalCelsius: 300, errorCelsius: 0.8 },
    ...{ standardUncertaintyCelsius: 0.5, expandedCelsius: 1 },
  });

const rules: readonly DecisionRule[] = [
  { kind: "simple" },
  { kind: "guarded", guardBandRatio: 1 },
  { kind: "guarded-binary", guardBandRatio: 0.83 },
  { kind: "target-risk", falseAcceptance: 0.05, isBinary: true },
];

describe("the probability of conformity", () => {
  it.each(rules)("is Student's t with the degrees of freedom there are: $kind", (rule) => {
    expect(assess(rule, 4).probability).toBeCloseTo(0.985, 5);
    expect(assess(rule, 4).printed.probability).toBe("98.5 %");
    expect(assess(rule, null).probability).toBeCloseTo(0.99966, 5);
    expect(assess(rule, null).printed.probability).toBe("> 99.9 %");
  });

  /** Nearly all of u_c from five readings. */
  const few = (change: Partial<EvidenceInput> = {}) => {
    const scattered = evidence.sensors.map((one) => ({
      ...one,
      repeatability: {
        ...{ kind: "standard" as const, standard: 60, unit: "microvolt" as const },
        ...{ degreesOfFreedom: 4, source: "invented" },
      },
    }));
    const [point] = measured({ ...evidence, sensors: scattered, ...change });
    if (!point) throw new Error("no point");
    return point;
  };

  it("of an evaluated point takes its own ν_eff", () => {
    const point = few();
    const nu = point.degreesOfFreedom as number;
    expect(Math.floor(nu)).toBe(4);
    const u = point.expandedCelsius / point.coverageFactor;
    const { probability } = point.conformity;
    expect(probability).toBeCloseTo(conformanceProbability(point.errorCelsius, u, -4.5, 4.5, nu), 10);
    expect(probability).toBeLessThan(conformanceProbability(point.errorCelsius, u, -4.5, 4.5) - 0.01);
  });

  it("and the guard band of a target risk follow the U that is printed, raised to the capability", () => {
    const decisionRule = { kind: "target-risk", falseAcceptance: 0.05, isBinary: true } as const;
    const scope = [
      { type: "K" as const, fromCelsius: 0, toCelsius: 1100, expandedCelsius: 5, source: "invented" },
    ];
    const [plain] = measured({ ...evidence, decisionRule });
    const [raised] = measured({ ...evidence, decisionRule, scope });
    if (!plain || !raised) throw new Error("no point");
    expect(plain.conformity.state).toBe("pass");
    // u = 5/k, about 2.5 °C: even an error of zero would lie within ± 4.5 °C at some 93 % only.
    expect(raised.printed.expandedCelsius).toBe("5.0");
    expect(raised.conformity.state).toBe("not-decidable");
    const { errorCelsius, coverageFactor, degreesOfFreedom } = raised;
    expect(raised.conformity.probability).toBeCloseTo(
      conformanceProbability(errorCelsius, 5 / coverageFactor, -4.5, 4.5, degreesOfFreedom),
      10,
    );
    expect(raised.conformity.probability).toBeLessThan(0.9);
    // A capability below U changes nothing, to the bit.
    const [kept] = measured({
      ...evidence,
      decisionRule,
      scope: scope.map((one) => ({ ...one, expandedCelsius: 0.01 })),
    });
    expect(kept?.conformity).toEqual(plain.conformity);
  });
});
