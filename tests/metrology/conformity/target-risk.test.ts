import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { conformanceProbability } from "@/lib/metrology/conformity/conformance-probability";
import { decideConformity } from "@/lib/metrology/conformity/decide-conformity";
import { guardBand } from "@/lib/metrology/conformity/guard-band";

/** u = 1 °C: every size is a multiple of u. */
const decide = (
  falseAcceptance: number,
  toleranceCelsius: number,
  errorCelsius: number,
  degreesOfFreedom: number | null = null,
) => {
  const decision = decideConformity({
    ...{ errorCelsius, toleranceCelsius, degreesOfFreedom },
    ...{ standardUncertaintyCelsius: 1, expandedCelsius: 2 },
    rule: { kind: "target-risk", falseAcceptance, isBinary: true },
  });
  if (!decision.ok) throw new Error(decision.problem.message);
  return decision.value;
};

describe("a target risk counts both tails (JCGM 106:2012, 7.4)", () => {
  it("does not pass at TL/u = 1.7, where even zero error has p_c = 0.911", () => {
    const decision = decide(0.05, 1.7, 0);
    expect(decision).toMatchObject({ verdict: "not-decidable", acceptanceCelsius: null });
    expect(decision.probability).toBeCloseTo(0.9109, 4);
    expect(decision.guardBandCelsius).toBeCloseTo(1.959963984540054, 9);
  });

  it("does not pass at TL/u = 2 with p_c = 0.943, but does with 0.95", () => {
    const far = decide(0.05, 2, 0.3);
    expect(far.verdict).toBe("fail");
    expect(far.probability).toBeLessThan(0.95);
    const limit = far.acceptanceCelsius as number;
    expect(conformanceProbability(limit, 1, -2, 2)).toBeCloseTo(0.95, 12);
    expect(limit).toBeLessThan(2 - 1.6448536269514722);
    expect(decide(0.05, 2, limit).verdict).toBe("pass");
    expect(decide(0.05, 2, limit + 1e-9).verdict).toBe("fail");
  });

  it("closes between p_c(0) just below and just above 1 − PFA", () => {
    expect(decide(0.05, 1.9599, 0).verdict).toBe("not-decidable");
    expect(decide(0.05, 1.96, 0).verdict).toBe("pass");
    // Student's t with ν = 4: 2.7764.
    expect(decide(0.05, 2.776, 0, 4).verdict).toBe("not-decidable");
    expect(decide(0.05, 2.777, 0, 4).verdict).toBe("pass");
    // Half the risk: 0.6745, where one tail alone would leave every tolerance open.
    expect(decide(0.5, 0.674, 0).verdict).toBe("not-decidable");
    expect(decide(0.5, 0.675, 0).verdict).toBe("pass");
  });

  it("is z·u where the other limit is far, and for a single limit", () => {
    const rule = { kind: "target-risk", falseAcceptance: 0.05, isBinary: true } as const;
    for (const tolerance of [10, 1000, Number.POSITIVE_INFINITY]) {
      const band = guardBand(rule, { standardUncertaintyCelsius: 1, expandedCelsius: 2 }, tolerance);
      expect(band.ok && band.value.guardBandCelsius).toBeCloseTo(1.6448536269514722, 10);
      expect(band.ok && band.value.closingCelsius).toBeCloseTo(1.959963984540054, 10);
    }
    const sure = guardBand(rule, { standardUncertaintyCelsius: 0, expandedCelsius: 0 }, 1);
    expect(sure.ok && sure.value).toEqual({ guardBandCelsius: 0, closingCelsius: 0 });
  });

  it("refuses a tolerance that is none", () => {
    for (const tolerance of [Number.NaN, 0, -1]) {
      const band = guardBand(
        { kind: "simple" },
        { standardUncertaintyCelsius: 1, expandedCelsius: 2 },
        tolerance,
      );
      expect(band.ok ? "" : band.problem.kind).toBe("outside-range");
      expect(band.ok ? "" : band.problem.message).toContain(`± ${tolerance} °C`);
    }
  });

  it("a pass never has p_c below 1 − PFA, and nothing that has it is refused", () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        number(0.001, 0.5),
        number(0.1, 12),
        number(0, 12),
        fc.constantFrom(null, 1, 4, 30, 1000),
        (risk, tolerance, error, nu) => {
          const { verdict, probability } = decide(risk, tolerance, error, nu);
          if (verdict === "pass") expect(probability).toBeGreaterThanOrEqual(1 - risk - 1e-12);
          else expect(probability).toBeLessThan(1 - risk + 1e-9);
        },
      ),
      { numRuns: 2000 },
    );
  });
});
