import { expect, it } from "vitest";
import { DecisionRule } from "@/lib/domain/evidence/schema";
import { decisionRules } from "@/lib/domain/order/labels";
import { decisionRuleOf } from "@/lib/domain/run/decision-rule-of";

const figures = { guardBandRatio: 0.83, falseAcceptancePercent: 5 };
const expected: Record<(typeof decisionRules)[number], DecisionRule> = {
  none: { kind: "none" },
  simple: { kind: "simple" },
  guarded: { kind: "guarded", guardBandRatio: 0.83 },
  "guarded-binary": { kind: "guarded-binary", guardBandRatio: 0.83 },
  "target-risk": { kind: "target-risk", falseAcceptance: 0.05, isBinary: true },
};

it.each(decisionRules)("an order's rule %s is the evidence's", (decisionRule) => {
  const rule = decisionRuleOf({ ...figures, decisionRule });
  expect(rule).toEqual(expected[decisionRule]);
  expect(DecisionRule.safeParse(rule).success).toBe(true);
});

it.each(["guarded", "guarded-binary", "target-risk"])(
  "without its figure %s decides nothing",
  (decisionRule) => {
    const none = { guardBandRatio: null, falseAcceptancePercent: null };
    expect(decisionRuleOf({ ...none, decisionRule })).toEqual({ kind: "none" });
  },
);
