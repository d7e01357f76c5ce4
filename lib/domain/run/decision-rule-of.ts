import type { DecisionRule } from "../evidence/schema";

/** The order's agreed rule in the evidence's words. */
export const decisionRuleOf = (order: {
  readonly decisionRule: string;
  readonly guardBandRatio: number | null;
  readonly falseAcceptancePercent: number | null;
}): DecisionRule => {
  if (order.decisionRule === "simple") return { kind: "simple" };
  if (order.decisionRule === "guarded" && order.guardBandRatio !== null)
    return { kind: "guarded", guardBandRatio: order.guardBandRatio };
  if (order.decisionRule === "guarded-binary" && order.guardBandRatio !== null)
    return { kind: "guarded-binary", guardBandRatio: order.guardBandRatio };
  if (order.decisionRule === "target-risk" && order.falseAcceptancePercent !== null)
    return { kind: "target-risk", falseAcceptance: order.falseAcceptancePercent / 100, isBinary: true };
  return { kind: "none" };
};
