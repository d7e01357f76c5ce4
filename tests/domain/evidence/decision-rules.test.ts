import { describe, expect, it } from "vitest";
import { decisionRuleText } from "@/lib/domain/certificate/decision-rule-text";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { DecisionRule } from "@/lib/domain/evidence/schema";
import { buildEvidence } from "./build-evidence";

/** One type K sensor at 600 °C, class 2 (± 4.5 °C), judged by a rule; its U is about 0.9 °C. */
const judged = (decisionRule: DecisionRule, errorCelsius: number) => {
  const outcome = evaluateEvidence({ ...buildEvidence({ sensors: ["K"], errorCelsius }), decisionRule });
  if (!outcome.ok) throw new Error(outcome.problems[0]?.message);
  const [point] = outcome.evaluation.points;
  if (point?.state !== "measured") throw new Error("not measured");
  return { ...point.conformity, u: point.expandedCelsius };
};

describe("decision rules of an evidence file", () => {
  it("binary with guard band: inside it is a fail and no conditional pass", () => {
    expect(judged({ kind: "guarded", guardBandRatio: 1 }, 4.2).state).toBe("conditional-pass");
    expect(judged({ kind: "guarded-binary", guardBandRatio: 1 }, 4.2).state).toBe("fail");
    expect(judged({ kind: "guarded-binary", guardBandRatio: 1 }, 3).state).toBe("pass");
    expect(judged({ kind: "guarded-binary", guardBandRatio: -1 }, 4.8).state).toBe("pass");
  });

  it("a guard band from a target risk is narrower than U at 5 %", () => {
    const rule = { kind: "target-risk", falseAcceptance: 0.05, isBinary: true } as const;
    const { acceptanceCelsius, u, state } = judged(rule, 3);
    expect(state).toBe("pass");
    expect(acceptanceCelsius).toBeGreaterThan(4.5 - u);
    expect(acceptanceCelsius).toBeLessThan(4.5 - 0.8 * u);
    expect(judged({ ...rule, isBinary: false }, 4.4).state).toBe("conditional-pass");
  });

  it("simple acceptance may ask for a U of at most a part of the tolerance", () => {
    expect(judged({ kind: "simple" }, 1).state).toBe("pass");
    expect(judged({ kind: "simple", largestRatio: 0.5 }, 1).state).toBe("pass");
    expect(judged({ kind: "simple", largestRatio: 0.05 }, 1).state).toBe("not-decidable");
  });

  it.each([
    [{ kind: "guarded-binary", guardBandRatio: 4 }],
    [{ kind: "target-risk", falseAcceptance: 0.6, isBinary: true }],
    [{ kind: "simple", largestRatio: 0 }],
  ])("refuses %o", (decisionRule) => {
    expect(evaluateEvidence({ ...buildEvidence(), decisionRule }).ok).toBe(false);
  });

  it("are said in words, each with its risk", () => {
    const text = (rule: DecisionRule) => {
      const words = decisionRuleText(rule);
      return `${words?.rule} ${words?.risk}`;
    };
    expect(text({ kind: "guarded-binary", guardBandRatio: 1 })).toMatch(
      /1 × U\. Pass: .* Fail: .* at most 2\.5 %/,
    );
    expect(text({ kind: "guarded-binary", guardBandRatio: 1 })).not.toContain("onditional");
    expect(text({ kind: "guarded-binary", guardBandRatio: -1 })).toContain("tolerance limit + 1 × U");
    expect(text({ kind: "target-risk", falseAcceptance: 0.02, isBinary: true })).toContain("at most 2 %");
    expect(text({ kind: "target-risk", falseAcceptance: 0.02, isBinary: false })).toContain(
      "Conditional pass",
    );
    expect(text({ kind: "simple", largestRatio: 0.25 })).toContain("exceeds 0.25 of the tolerance");
    expect(text({ kind: "simple" })).not.toContain("exceeds");
  });
});
