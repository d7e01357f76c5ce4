import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { conformanceProbability } from "@/lib/metrology/conformity/conformance-probability";
import {
  type ConformityInput,
  type ConformityVerdict,
  decideConformity,
} from "@/lib/metrology/conformity/decide-conformity";
import { publishedRules } from "@/lib/metrology/conformity/decision-rules";
import { type ConformityRule, guardBand } from "@/lib/metrology/conformity/guard-band";

const uncertainty = { standardUncertaintyCelsius: 0.25, expandedCelsius: 0.5 } as const;

/** About a tolerance so wide that one tail is left. */
const band = (rule: ConformityRule, change: object = {}) => {
  const w = guardBand(rule, { ...uncertainty, ...change }, Number.POSITIVE_INFINITY);
  return w.ok ? w.value.guardBandCelsius : w.problem.kind;
};

const decide = (change: Partial<ConformityInput>) => {
  const decision = decideConformity({
    ...uncertainty,
    errorCelsius: 0,
    toleranceCelsius: 2.5,
    rule: { kind: "simple" },
    ...change,
  });
  if (!decision.ok) throw new Error(decision.problem.message);
  return decision.value;
};

describe("guardBand", () => {
  it("by ratio is r·U, and none for simple acceptance", () => {
    expect(band({ kind: "simple" })).toBe(0);
    expect(band({ kind: "simple", largestRatio: 0.25 })).toBe(0);
    expect(band({ kind: "guarded", guardBandRatio: 0 })).toBe(0);
    expect(band({ kind: "guarded", guardBandRatio: 0.83 })).toBeCloseTo(0.415, 12);
    expect(band({ kind: "guarded-binary", guardBandRatio: -1 })).toBe(-0.5);
  });

  // JCGM 106:2012, 8.3.3: one-sided quantiles; with Student's t at ν = 4 1 % needs 3.75·u, not 2.33·u.
  it.each([
    [0.05, null, 1.6448536269514722],
    [0.05, undefined, 1.6448536269514722],
    [0.01, null, 2.3263478740408408],
    [0.01, 4, 3.7469473879791977],
    [0.01, 4.99, 3.7469473879791977],
    [0.05, 1, 6.313751514675043],
    [0.025, 10, 2.228138851986274],
    [0.5, null, 0],
    [0.5, 3, 0],
    [0.000001, null, 4.753424308822899],
  ])("by a risk of %d with %s degrees of freedom is %d·u", (falseAcceptance, degreesOfFreedom, z) => {
    const w = band({ kind: "target-risk", falseAcceptance, isBinary: true }, { degreesOfFreedom });
    expect(w).toBeCloseTo(z * 0.25, 8);
  });

  it.each<[string, ConformityRule, object, string]>([
    ["u not a number", { kind: "simple" }, { standardUncertaintyCelsius: Number.NaN }, "not-finite"],
    ["U without end", { kind: "simple" }, { expandedCelsius: Number.POSITIVE_INFINITY }, "not-finite"],
    ["u below zero", { kind: "simple" }, { standardUncertaintyCelsius: -1 }, "outside-range"],
    ["U below zero", { kind: "simple" }, { expandedCelsius: -1 }, "outside-range"],
    ["ν below one", { kind: "simple" }, { degreesOfFreedom: 0.9 }, "too-few"],
    ["ν not a number", { kind: "simple" }, { degreesOfFreedom: Number.NaN }, "too-few"],
    ["no part of the tolerance", { kind: "simple", largestRatio: 0 }, {}, "outside-range"],
    ["r below zero, non-binary", { kind: "guarded", guardBandRatio: -0.1 }, {}, "outside-range"],
    ["r not a number", { kind: "guarded", guardBandRatio: Number.NaN }, {}, "outside-range"],
    ["r not a number, binary", { kind: "guarded-binary", guardBandRatio: Number.NaN }, {}, "outside-range"],
    [
      "a risk above one half",
      { kind: "target-risk", falseAcceptance: 0.51, isBinary: true },
      {},
      "outside-range",
    ],
    ["a risk of zero", { kind: "target-risk", falseAcceptance: 0, isBinary: true }, {}, "outside-range"],
  ])("refuses %s", (_, rule, change, kind) => {
    expect(band(rule, change)).toBe(kind);
    const decision = decideConformity({
      ...uncertainty,
      errorCelsius: 0,
      toleranceCelsius: 1,
      rule,
      ...change,
    });
    expect(decision.ok ? "" : decision.problem.kind).toBe(kind);
    expect(decision.ok ? "" : decision.problem.message).not.toBe("");
  });

  it("takes an infinite ratio for what it is", () => {
    expect(band({ kind: "guarded-binary", guardBandRatio: Number.POSITIVE_INFINITY })).toBe("outside-range");
  });
});

describe("decideConformity, the rules beyond simple and guarded", () => {
  // TL = 2.5, w = 0.5.
  it.each([
    [2, "pass"],
    [2 + 2 ** -51, "fail"],
    [2.5, "fail"],
    [9, "fail"],
  ] as const)("binary with guard band (4.2.2), an error of %d °C: %s", (errorCelsius, verdict) => {
    const rule = { kind: "guarded-binary", guardBandRatio: 1 } as const;
    expect(decide({ errorCelsius, rule }).verdict).toBe(verdict);
    expect(decide({ errorCelsius: -errorCelsius, rule }).verdict).toBe(verdict);
    expect(decide({ errorCelsius, rule })).toMatchObject({ guardBandCelsius: 0.5, acceptanceCelsius: 2 });
  });

  it("uncritical rejects beyond TL + U only", () => {
    const rule = { kind: "guarded-binary", guardBandRatio: -1 } as const;
    expect(decide({ errorCelsius: 3, rule }).verdict).toBe("pass");
    expect(decide({ errorCelsius: 3.001, rule }).verdict).toBe("fail");
  });

  it("by target risk, binary and non-binary: w = 1.645·0.25 = 0.411", () => {
    const at = (errorCelsius: number, isBinary: boolean) =>
      decide({ errorCelsius, rule: { kind: "target-risk", falseAcceptance: 0.05, isBinary } }).verdict;
    expect([2.08, 2.09, 2.5, 2.9, 2.92].map((error) => at(error, true))).toEqual([
      "pass",
      "fail",
      "fail",
      "fail",
      "fail",
    ]);
    expect([2.08, 2.09, 2.5, 2.9, 2.92].map((error) => at(error, false))).toEqual([
      "pass",
      "conditional-pass",
      "conditional-pass",
      "conditional-fail",
      "fail",
    ]);
  });

  it("a simple rule that asks for U at most a quarter of the tolerance decides nothing beyond", () => {
    const rule = { kind: "simple", largestRatio: 0.25 } as const;
    expect(decide({ rule, expandedCelsius: 0.625 }).verdict).toBe("pass");
    const beyond = decide({ rule, expandedCelsius: 0.626 });
    expect(beyond).toMatchObject({ verdict: "not-decidable", acceptanceCelsius: null });
    expect(decide({ rule, expandedCelsius: 0.626, errorCelsius: 99 }).verdict).toBe("not-decidable");
  });

  it("states p_c by Student's t where degrees of freedom are given", () => {
    const few = decide({ errorCelsius: 2, degreesOfFreedom: 4 }).probability;
    const many = decide({ errorCelsius: 2 }).probability;
    expect(few).toBe(conformanceProbability(2, 0.25, -2.5, 2.5, 4));
    expect(few).toBeLessThan(many);
  });

  it.each([
    [{ errorCelsius: Number.NaN }, "not-finite"],
    [{ toleranceCelsius: Number.POSITIVE_INFINITY }, "not-finite"],
    [{ toleranceCelsius: 0 }, "outside-range"],
    [{ toleranceCelsius: -2 }, "outside-range"],
  ])("refuses %o", (change, kind) => {
    const decision = decideConformity({
      ...uncertainty,
      errorCelsius: 0,
      toleranceCelsius: 2.5,
      rule: { kind: "simple" },
      ...change,
    });
    expect(decision.ok ? "" : decision.problem.kind).toBe(kind);
    expect(decision.ok ? "" : decision.problem.message).not.toBe("");
  });
});

describe("published rules (ILAC-G8:09/2019, Table 1)", () => {
  it("state a risk that their guard band keeps", () => {
    for (const { guardBandRatio, statedRisk, rule } of publishedRules) {
      const w = band(rule, { standardUncertaintyCelsius: 0.5, expandedCelsius: 1 });
      expect(w).toBeCloseTo(guardBandRatio, 12);
      // "< 2.5 % …", "< 1 ppm …": the limit that the risk at the acceptance limit stays below.
      const [, size = "", unit] = /^< ([\d.]+) (%|ppm)/.exec(statedRisk) ?? [];
      const stated = Number(size) * (unit === "ppm" ? 1e-6 : 0.01);
      const risk = 1 - conformanceProbability(1000 - Math.abs(guardBandRatio), 0.5, -1000, 1000);
      expect(risk).toBeLessThanOrEqual(stated + 1e-12);
      expect(stated).toBeLessThan(Math.max(4 * risk, 2e-6));
    }
    expect(publishedRules.map(({ name, guardBandRatio }) => [name, guardBandRatio])).toEqual([
      ["6 sigma", 3],
      ["3 sigma", 1.5],
      ["ILAC-G8:2009", 1],
      ["ISO 14253-1:2017", 0.83],
      ["Simple acceptance", 0],
      ["Uncritical", -1],
    ]);
  });
});

const side = (verdict: ConformityVerdict) =>
  verdict === "pass" || verdict === "conditional-pass" ? "inside" : "outside";
const sureness = {
  pass: 2,
  fail: 2,
  "conditional-pass": 1,
  "conditional-fail": 1,
  "not-decidable": 0,
} as const;

describe("more uncertainty never gives a better verdict", () => {
  const rules = fc.oneof(
    fc.record({ kind: fc.constant("simple" as const) }),
    fc.record({
      kind: fc.constant("simple" as const),
      largestRatio: fc.double({ min: 0.1, max: 2, noNaN: true }),
    }),
    fc.record({
      kind: fc.constantFrom("guarded" as const, "guarded-binary" as const),
      guardBandRatio: fc.double({ min: 0, max: 3, noNaN: true }),
    }),
    fc.record({
      kind: fc.constant("target-risk" as const),
      falseAcceptance: fc.double({ min: 0.0001, max: 0.5, noNaN: true }),
      isBinary: fc.boolean(),
    }),
  );
  const sizes = fc.double({ min: 0, max: 5, noNaN: true });

  it("a pass at a large U is a pass at any smaller one; a statement only becomes less sure", () => {
    fc.assert(
      fc.property(
        rules,
        sizes,
        sizes,
        fc.double({ min: 0, max: 8, noNaN: true }),
        (rule, one, more, error) => {
          const at = (u: number) =>
            decide({ rule, standardUncertaintyCelsius: u, expandedCelsius: 2 * u, errorCelsius: error })
              .verdict;
          const small = at(one);
          const large = at(one + more);
          if (large === "pass") expect(small).toBe("pass");
          const isNonBinary = rule.kind === "guarded" || (rule.kind === "target-risk" && !rule.isBinary);
          if (isNonBinary) {
            expect(sureness[large]).toBeLessThanOrEqual(sureness[small]);
            // The tolerance limit itself does not move with U.
            if (large !== "not-decidable") expect(side(large)).toBe(side(small));
          }
          if (small === "not-decidable") expect(large).toBe("not-decidable");
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("the sign of the error, and the scale, change nothing", () => {
    fc.assert(
      fc.property(rules, sizes, sizes, fc.constantFrom(0.5, 2, 1024), (rule, u, error, scale) => {
        const one = decide({
          rule,
          standardUncertaintyCelsius: u,
          expandedCelsius: 2 * u,
          errorCelsius: error,
        });
        const turned = decide({
          rule,
          standardUncertaintyCelsius: u,
          expandedCelsius: 2 * u,
          errorCelsius: -error,
        });
        const scaled = decide({
          rule,
          standardUncertaintyCelsius: u * scale,
          expandedCelsius: 2 * u * scale,
          errorCelsius: error * scale,
          toleranceCelsius: 2.5 * scale,
        });
        expect(turned.verdict).toBe(one.verdict);
        expect(turned.probability).toBeCloseTo(one.probability, 14);
        expect(scaled.verdict).toBe(one.verdict);
      }),
      { numRuns: 1000 },
    );
  });
});
